// Package parallel shares work out among the processors. A panic in one of its goroutines
// is one of the goroutine that asked for the work, so that it can be told like any other.
package parallel

import (
	"context"
	"runtime"
	"sync"
	"sync/atomic"
)

// Do calls do for each 0 <= i < n, on as many processors as there are but at most so many
// workers. A worker has a number of its own and does one i at a time. When do panics, Do
// panics with a *Panic once all workers have come to an end.
func Do(n, workers int, do func(worker, i int)) {
	_ = Until(context.Background(), n, workers, do) // which is never done
}

// Until is Do that begins with no i any more when the context is done. The error is that of the context.
func Until(ctx context.Context, n, workers int, do func(worker, i int)) error {
	workers = min(workers, runtime.GOMAXPROCS(0), n)
	var next atomic.Int64
	var wait sync.WaitGroup
	var fault atomic.Pointer[Panic]
	for w := range workers {
		wait.Add(1)
		go func() {
			defer wait.Done()
			defer func() {
				if v := recover(); v != nil {
					next.Store(int64(n))
					fault.CompareAndSwap(nil, Caught(v))
				}
			}()
			for i := int(next.Add(1)) - 1; i < n && ctx.Err() == nil; i = int(next.Add(1)) - 1 {
				do(w, i)
				breathe()
			}
		}()
	}
	wait.Wait()
	if p := fault.Load(); p != nil {
		panic(p)
	}
	return ctx.Err()
}
