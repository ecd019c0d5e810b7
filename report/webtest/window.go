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

// Size gives the page of this window so many pixels of room, which may be as few as a
// telephone has.
func (b *Browser) Size(width, height int) {
	b.t.Helper()
	b.send("POST", "/goog/cdp/execute", map[string]any{"cmd": "Emulation.setDeviceMetricsOverride", "params": map[string]any{
		"width": width, "height": height, "deviceScaleFactor": 1, "mobile": false,
	}})
}
