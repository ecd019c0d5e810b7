package parallel

import (
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Every i is done once, by workers whose numbers are their own.
func TestDo(t *testing.T) {
	for _, workers := range []int{1, 3, 100} {
		var times [50]atomic.Int32
		Do(len(times), workers, func(worker, i int) {
			assert.Less(t, worker, workers)
			times[i].Add(1)
		})
		for i := range times {
			assert.Equal(t, int32(1), times[i].Load())
		}
	}
	Do(0, 4, func(int, int) { assert.Fail(t, "there is nothing to do") })
}

// A panic of a worker is one of whoever asked for the work, with the place where it was,
// also through another Do.
func TestPanicOfAWorker(t *testing.T) {
	for _, depth := range []int{1, 2} {
		p := panicOf(func() { spoilt(depth) })
		assert.Equal(t, "spoilt", p.Error())
		assert.Regexp(t, `^parallel/parallel_test\.go:\d+$`, p.Place)
		assert.Contains(t, string(p.Trace), "parallel_test.go")
	}
	var none []int
	p := panicOf(func() { none[len(none)] = 0 })
	assert.Contains(t, p.Error(), "index out of range")
	assert.Regexp(t, `^parallel/parallel_test\.go:\d+$`, p.Place)
}

func spoilt(depth int) {
	Do(100, 4, func(_, i int) {
		switch {
		case depth > 1:
			spoilt(depth - 1)
		case i == 17:
			panic("spoilt")
		}
	})
}

func panicOf(work func()) (p *Panic) {
	defer func() { p = Caught(recover()) }()
	work()
	return nil
}
