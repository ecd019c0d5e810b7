package portable

import (
	"math/big"
	"sync"
)

// piBits are enough for any float64: 1024 before the point, and more than 100 behind
// the zeros that an angle next to a multiple of π/2 begins with.
const piBits = 1280

// halfPi is π/2 by Machin's formula π/4 = 4 arctan(1/5) - arctan(1/239), as a whole
// number over 2^piBits.
var halfPi = sync.OnceValue(func() *big.Int {
	sum := arctanOfInverse(5)
	sum.Lsh(sum, 2).Sub(sum, arctanOfInverse(239))
	return sum.Lsh(sum, 1)
})

// arctanOfInverse is arctan(1/n) as a whole number over 2^piBits, rounding apart.
func arctanOfInverse(n int64) *big.Int {
	sum, square := new(big.Int), big.NewInt(n*n)
	power := new(big.Int).Lsh(big.NewInt(1), piBits)
	power.Quo(power, big.NewInt(n))
	for k := int64(1); power.Sign() > 0; k += 2 {
		term := new(big.Int).Quo(power, big.NewInt(k))
		if k%4 == 1 {
			sum.Add(sum, term)
		} else {
			sum.Sub(sum, term)
		}
		power.Quo(power, square)
	}
	return sum
}

// manyQuarterTurns is quarterTurns for angles of many turns, with as many digits of π
// as that takes.
func manyQuarterTurns(x float64) (turns int, high, low float64) {
	exact, _ := new(big.Float).SetMantExp(big.NewFloat(x), piBits).Int(nil)
	exact.Add(exact, new(big.Int).Rsh(halfPi(), 1)) // so that what is left is at most π/4
	n, rest := new(big.Int).DivMod(exact, halfPi(), new(big.Int))
	rest.Sub(rest, new(big.Int).Rsh(halfPi(), 1))
	left := new(big.Float).SetInt(rest)
	left.SetMantExp(left, -piBits)
	high, _ = left.Float64()
	low, _ = new(big.Float).Sub(left, big.NewFloat(high)).Float64()
	return int(n.And(n, big.NewInt(3)).Int64()), high, low
}
