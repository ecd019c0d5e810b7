package parallel

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// TestPageHasItsTurn: what a timer of the page is to do is done while work goes on.
func TestPageHasItsTurn(t *testing.T) {
	ctx, cancel := context.WithTimeout(context.Background(), 50*time.Millisecond)
	defer cancel()
	stopped := 0
	Do(1_000_000, 1, func(_, i int) {
		if ctx.Err() != nil {
			return
		}
		stopped = i
		for from := time.Now(); time.Since(from) < time.Millisecond; {
		}
	})
	assert.Less(t, stopped, 999_999)
}
