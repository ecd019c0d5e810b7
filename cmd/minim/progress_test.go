package main

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// TestMeter: silent for a second, then five lines a second at the most, each in
// the place of the last, and nothing left over.
func TestMeter(t *testing.T) {
	var out bytes.Buffer
	now := time.Date(2020, 1, 1, 0, 0, 0, 0, time.UTC)
	m := newMeter(&out, 4_000_000)
	assert.Equal(t, nil, m.out, "a buffer is no terminal")
	m.out, m.start, m.now = &out, now, func() time.Time { return now }
	step := func(ms int, batches int) string {
		out.Reset()
		now = now.Add(time.Duration(ms) * time.Millisecond)
		m.add(batches)
		return out.String()
	}
	assert.Equal(t, "", step(900, 100_000))
	assert.Equal(t, "\rminim: simulated 200 000 of at most 4 000 000 batches, about 19 s left", step(100, 100_000))
	assert.Equal(t, "", step(100, 100_000))
	longest := "minim: simulated 3 600 000 of at most 4 000 000 batches, about 11 s left"
	assert.Equal(t, "\r"+longest, step(97_900, 3_300_000))
	assert.Equal(t, "\rminim: simulated 3 700 000 of at most 4 000 000 batches, about 8 s left ", step(200, 100_000))
	out.Reset()
	m.clear()
	assert.Equal(t, "\r"+strings.Repeat(" ", len(longest))+"\r", out.String())
	out.Reset()
	m.clear()
	assert.Equal(t, "", out.String())
}

func TestDuration(t *testing.T) {
	assert.Equal(t, "about 99 s", duration(99.4))
	assert.Equal(t, "about 2 min", duration(100))
}

// TestBusy: what is done is said each second with the time that it has taken, and nothing
// is left over; on what is no terminal, nothing is shown.
func TestBusy(t *testing.T) {
	var out bytes.Buffer
	b := newBusy(&out, "searching routes")
	b.alive()
	b.done()
	assert.Equal(t, "", out.String(), "a buffer is no terminal")
	b = newBusy(&out, "searching routes")
	b.out, b.now = &out, func() time.Time { return b.start.Add(3 * time.Second) }
	b.alive()
	first := "minim: searching routes, 3 s so far; Ctrl-C stops it"
	assert.Equal(t, "\r"+first, out.String())
	out.Reset()
	b.at(2, 7)
	b.alive()
	second := "minim: searched 2 of 7 kinds of route, 3 s so far; Ctrl-C stops it"
	assert.Equal(t, "\r"+second, out.String())
	out.Reset()
	b.done()
	b.alive()
	assert.Equal(t, "\r"+strings.Repeat(" ", len(second))+"\r", out.String())
}

// TestStoppedWithinASecond: a command that does not hear of an interruption is left.
func TestStoppedWithinASecond(t *testing.T) {
	var out bytes.Buffer
	done := make(chan int, 1)
	done <- 7
	assert.Equal(t, 7, stopped(done, &out))
	assert.Equal(t, exitFailed, stopped(make(chan int), &out))
	assert.Equal(t, "minim: stopped\n", out.String())
}
