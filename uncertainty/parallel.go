package uncertainty

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// parallel calls do for each 0 <= i < n, on as many processors as there are but
// at most so many workers. A worker has a number of its own and does one i at a
// time.
func parallel(n, workers int, do func(worker, i int)) {
	workers = min(workers, runtime.GOMAXPROCS(0), n)
	var next atomic.Int64
	var wait sync.WaitGroup
	for w := range workers {
		wait.Add(1)
		go func() {
			defer wait.Done()
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(w, i)
			}
		}()
	}
	wait.Wait()
}
