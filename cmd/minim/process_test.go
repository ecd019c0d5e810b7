package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// The program as a process, in milliseconds of processor time, its start and its end with it: the
// least of some runs, since others on the machine only make it longer. What only starts, what simulates more
// and what draws stand beside it:
//
//	go test ./cmd/minim -run '^$' -bench Process -benchtime 20x
func BenchmarkProcess(b *testing.B) {
	program := filepath.Join(b.TempDir(), "minim")
	out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput()
	require.NoError(b, err, string(out))
	folder := filepath.Join(b.TempDir(), "results")
	for _, run := range []struct {
		name string
		args []string
	}{
		{"help", []string{"--help"}},
		{"compare", []string{"compare"}},
		{"compare1000000trials", []string{"compare", "--trials", "1000000"}},
		{"compareJSON", []string{"compare", "--format", "json"}},
		{"compareOut", []string{"compare", "--out", folder}},
	} {
		b.Run(run.name, func(b *testing.B) {
			least := time.Hour
			for b.Loop() {
				require.NoError(b, os.RemoveAll(folder))
				cmd := exec.Command(program, run.args...)
				require.NoError(b, cmd.Run())
				least = min(least, cmd.ProcessState.UserTime()+cmd.ProcessState.SystemTime())
			}
			b.ReportMetric(float64(least.Microseconds())/1000, "processor-ms")
		})
	}
}
