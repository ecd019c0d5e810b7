package random

// BlockSize is the number of trials in a block. It is part of the identity of
// the random streams: another size gives other draws.
const BlockSize = 512

// Blocks that so many trials take, of which the last may be short.
func Blocks(trials int) int { return (trials + BlockSize - 1) / BlockSize }
