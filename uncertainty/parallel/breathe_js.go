package parallel

import "time"

// between is how long a page in a browser may wait for its turn.
const between = 15 * time.Millisecond

var breathed = time.Now()

// breathe lets the page that the program runs in do what is waiting, such as stopping the work. All
// goroutines have one thread there, and the page has its turn when they sleep.
func breathe() {
	if time.Since(breathed) >= between {
		time.Sleep(time.Microsecond)
		breathed = time.Now()
	}
}
