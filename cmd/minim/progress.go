package main

import (
	"cmp"
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
	"time"
	"unicode/utf8"

	"minim/equipment/quantity"
	"minim/uncertainty/parallel"
)

// meter shows on a terminal how far a long simulation has come.
type meter struct {
	mutex          sync.Mutex
	out            io.Writer // nil where nothing is to be shown
	now            func() time.Time
	start, shownAt time.Time
	done, most     int
	width          int // of what is on the line
	window         func() int
}

// newMeter shows the progress of at most so many batches, if out is a terminal.
func newMeter(out io.Writer, most int) *meter {
	m := &meter{now: time.Now, start: time.Now(), most: most, window: func() int { return usualWindow }}
	if isTerminal(out) {
		m.out, m.window = out, func() int { return cmp.Or(columns(out.(*os.File)), usualWindow) }
	}
	return m
}

func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// Nothing is shown in the first second, and then five times a second.
const (
	showAfter = time.Second
	showEvery = 200 * time.Millisecond
)

// add counts batches that are done. It may be called by several goroutines.
func (m *meter) add(batches int) {
	m.mutex.Lock()
	defer m.mutex.Unlock()
	m.done += batches
	now := m.now()
	if m.out == nil || now.Sub(m.start) < showAfter || now.Sub(m.shownAt) < showEvery {
		return
	}
	m.shownAt = now
	left := now.Sub(m.start).Seconds() * float64(m.most-m.done) / float64(m.done)
	m.show(fmt.Sprintf("minim: simulated %s of at most %s batches, %s left", quantity.Grouped(m.done), quantity.Grouped(m.most), duration(left)))
}

// duration is "about 8 s" or "about 3 min".
func duration(seconds float64) string {
	unit := "s"
	if seconds >= 100 {
		seconds, unit = seconds/60, "min"
	}
	return fmt.Sprintf("about %.0f %s", seconds, unit)
}

// usualWindow is as many columns as a terminal has that does not say how many.
const usualWindow = 80

// show replaces what is on the line, which ends before the edge of the window: a longer one
// would go on below, and stay there.
func (m *meter) show(text string) {
	if m.out == nil {
		return
	}
	room := max(m.window()-1, 1)
	if letters := []rune(text); len(letters) > room {
		text = string(letters[:room-1]) + "…"
	}
	fmt.Fprintf(m.out, "\r%-*s", min(m.width, room), text)
	m.width = max(min(m.width, room), utf8.RuneCountInString(text))
}

// clear takes the line away.
func (m *meter) clear() {
	m.mutex.Lock()
	defer m.mutex.Unlock()
	if m.width > 0 {
		fmt.Fprintf(m.out, "\r%s\r", strings.Repeat(" ", m.width))
		m.width = 0
	}
}

// busy shows on a terminal that long work is going on, and for how long.
type busy struct {
	*meter
	text  string
	ended chan struct{}
}

// newBusy says what is being done, from the second second on and then every second.
func newBusy(out io.Writer, text string) *busy {
	b := &busy{newMeter(out, 0), text, make(chan struct{})}
	if b.out != nil {
		go b.tick(time.NewTicker(time.Second))
	}
	return b
}

// tick shows the line until the work is done.
func (b *busy) tick(t *time.Ticker) {
	defer t.Stop()
	defer func() {
		if v := recover(); v != nil {
			os.Exit(fault(os.Stderr, os.Args[1:], parallel.Caught(v)))
		}
	}()
	for {
		select {
		case <-b.ended:
			return
		case <-t.C:
			b.alive()
		}
	}
}

// alive shows what is being done and for how long.
func (b *busy) alive() {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	select {
	case <-b.ended:
	default:
		b.show(fmt.Sprintf("minim: %s, %.0f s so far; Ctrl-C stops it", b.text, b.now().Sub(b.start).Seconds()))
	}
}

// at is called when so many stages of a search are done.
func (b *busy) at(done, all int) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	b.text = fmt.Sprintf("searched %d of %d kinds of route", done, all)
}

// done takes the line away.
func (b *busy) done() {
	b.mutex.Lock()
	close(b.ended)
	b.mutex.Unlock()
	b.clear()
}
