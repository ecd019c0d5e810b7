package parallel

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"strings"
)

// Panic is what a goroutine panicked with, and where.
type Panic struct {
	Value any
	// Place is the file and the line of this module, as in "plan/worth.go:143"; "" where
	// there is none.
	Place string
	// Trace of the goroutine.
	Trace []byte
}

// Caught describes the value of a panic. It is called by the deferred function that
// recovered it; what another goroutine panicked with stays as it was.
func Caught(value any) *Panic {
	if p, ok := value.(*Panic); ok {
		return p
	}
	return &Panic{value, place(), debug.Stack()}
}

func (p *Panic) Error() string { return fmt.Sprint(p.Value) }

// place is where the module panicked: its first line above the panic itself.
func place() string {
	callers := make([]uintptr, 64)
	frames := runtime.CallersFrames(callers[:runtime.Callers(1, callers)])
	panicked := false
	for {
		f, more := frames.Next()
		if panicked && strings.HasPrefix(f.Function, "minim/") || panicked && strings.HasPrefix(f.Function, "main.") {
			return fmt.Sprintf("%s:%d", lastTwo(f.File), f.Line)
		}
		panicked = panicked || f.Function == "runtime.gopanic"
		if !more {
			return ""
		}
	}
}

// lastTwo are the last two parts of a path.
func lastTwo(path string) string {
	parts := strings.Split(path, "/")
	return strings.Join(parts[max(0, len(parts)-2):], "/")
}
