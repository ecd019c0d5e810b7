package webtest

import (
	"fmt"
	"slices"
)

// Windows is how many windows have been open so far; the first is that of [Start].
func (b *Browser) Windows() int {
	b.t.Helper()
	for _, handle := range b.send("GET", "/window/handles", nil).([]any) {
		if !slices.Contains(b.windows, handle.(string)) {
			b.windows = append(b.windows, handle.(string))
		}
	}
	return len(b.windows)
}

// Turn turns to a window, counted from 0 in the order in which they came, and waits for it.
func (b *Browser) Turn(window int) {
	b.t.Helper()
	waitFor(b.t, fmt.Sprintf("window %d", window), func() bool { return b.Windows() > window })
	b.send("POST", "/window", map[string]any{"handle": b.windows[window]})
}

// Size gives the page so many pixels of room, without the frame of the window.
func (b *Browser) Size(width, height int) {
	b.t.Helper()
	frame := [2]int{}
	for range 2 { // the second time with the frame that the first has shown
		b.send("POST", "/window/rect", map[string]any{"width": width + frame[0], "height": height + frame[1]})
		inside := b.Run("return [innerWidth, innerHeight]").([]any)
		frame = [2]int{frame[0] + width - int(inside[0].(float64)), frame[1] + height - int(inside[1].(float64))}
	}
	if frame := b.Run("return [innerWidth, innerHeight]"); fmt.Sprint(frame) != fmt.Sprint([]int{width, height}) {
		b.t.Fatalf("the window has %v pixels in place of %d × %d", frame, width, height)
	}
}
