package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// search is a run of minim plan, or of what else searches, on the demo or on fifteen instruments.
type search struct {
	name string
	args []string
	// tolerance in percent, for the conservation laboratory; 0 for the demo. Of its instruments so many
	// are there, all of them with 0.
	tolerance, instruments int
	long                   bool
}

// searches are those whose times are kept: what is wanted of them on a quiet machine stands beside them.
func searches() []search {
	list := []search{
		{name: "demo", args: []string{"plan"}},                                                         // 1 s
		{name: "demo-buy", args: []string{"buy"}, long: true},                                          // 2 s
		{name: "demo-rescue", args: []string{"rescue", "demo/dye.toml", "--has", "0.08 % w/v, 10 mL"}}, // 1 s
		{name: "within-12", args: []string{"plan"}, tolerance: 12},                                     // 4 s
		{name: "within-8", args: []string{"plan"}, tolerance: 8, long: true},
		{name: "within-5", args: []string{"plan"}, tolerance: 5, long: true},
		{name: "within-4", args: []string{"plan"}, tolerance: 4, long: true},
		{name: "within-3", args: []string{"plan"}, tolerance: 3, long: true}, // 10 s
		{name: "within-2", args: []string{"plan"}, tolerance: 2, long: true},
		{name: "all-within-5", args: []string{"plan", "--both-ways"}, tolerance: 5, long: true}, // 30 s
	}
	for _, n := range []int{6, 9, 12} {
		list = append(list, search{name: fmt.Sprintf("instruments-%d", n), args: []string{"plan"}, tolerance: 5, instruments: n, long: true})
	}
	for _, n := range []string{"1", "2", "4"} {
		list = append(list, search{name: "dilutions-" + n, args: []string{"plan", "--steps", n}, tolerance: 5, long: true})
	}
	return list
}

// BenchmarkSearch is the processor time of whole processes that search, and whether they searched all: those that
// take long are left out with -short.
//
//	go test ./cmd/minim -run '^$' -bench Search -benchtime 1x
func BenchmarkSearch(b *testing.B) {
	program := filepath.Join(b.TempDir(), "minim")
	out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput()
	require.NoError(b, err, string(out))
	for _, s := range searches() {
		if s.long && testing.Short() {
			continue
		}
		b.Run(s.name, func(b *testing.B) {
			args := append(s.args, "--format", "markdown") // which has what the screen has, in lines as long as they are
			if s.tolerance > 0 {
				args = append(args, s.laboratory(b))
			}
			for b.Loop() {
				cmd := exec.Command(program, args...)
				found, err := cmd.Output()
				require.NoError(b, err)
				complete := 1.0
				if strings.Contains(string(found), "are tried") {
					complete = 0
				}
				b.ReportMetric((cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()).Seconds(), "processor-s")
				b.ReportMetric(complete, "complete")
				b.ReportMetric(0, "ns/op") // which others on the machine make longer
			}
		})
	}
}

// laboratory writes the conservation laboratory with another tolerance, and says where the prep is.
func (s search) laboratory(b *testing.B) string {
	read := func(name string) string {
		text, err := os.ReadFile(filepath.Join("../../testdata/benches/conservation-lab", name))
		require.NoError(b, err)
		return string(text)
	}
	folder := b.TempDir()
	write := func(name, text string) {
		require.NoError(b, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600))
	}
	prep := strings.Replace(read("biocide.toml"), `tolerance = "5 %`, fmt.Sprintf(`tolerance = "%d %%`, s.tolerance), 1)
	prep, _, _ = strings.Cut(prep, "[[route]]") // which may use what is left out
	write("biocide.toml", prep)
	write("bench.toml", fewer(read("bench.toml"), s.instruments))
	return filepath.Join(folder, "biocide.toml")
}

// fewer keeps so many instruments of a kit, the first in its order, and all candidates; all of them with 0.
func fewer(kit string, instruments int) string {
	tables := strings.Split(kit, "\n[[")
	kept, n := tables[:1:1], 0
	for _, t := range tables[1:] {
		if candidate := strings.HasPrefix(t, "candidate"); candidate || instruments == 0 || n < instruments {
			kept = append(kept, t)
			if !candidate {
				n++
			}
		}
	}
	return strings.Join(kept, "\n[[")
}
