package bench

import (
	"bufio"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// toBeKilled names, for a process that is killed, the file to which it adds.
const toBeKilled = "MINIM_TEST_KILLED"

// A process that adds entries is killed, early and late: what it has called added is there,
// and the record reads and can be added to.
func TestKilledWhileAdding(t *testing.T) {
	p := demoPrep(t)
	if path := os.Getenv(toBeKilled); path != "" {
		for i := 0; ; i++ {
			temperature := fmt.Sprintf("%d °C", 15+i%10)
			require.NoError(t, Add(t.Context(), path, p, Addition{By: "AK", At: "2026-11-28", Lines: []string{"bench: " + temperature}}))
			fmt.Println("added", temperature)
		}
	}
	path := recordFile(t, twoDilutions(""))
	promised := 0
	for i := range 12 {
		child := exec.Command(os.Args[0], "-test.run=^TestKilledWhileAdding$")
		child.Env = append(os.Environ(), toBeKilled+"="+path)
		out, err := child.StdoutPipe()
		require.NoError(t, err)
		require.NoError(t, child.Start())
		printed := bufio.NewScanner(out)
		require.True(t, printed.Scan())
		count := strings.Count(printed.Text(), "added")
		time.AfterFunc(time.Duration(i)*time.Millisecond, func() { _ = child.Process.Kill() })
		for printed.Scan() {
			count += strings.Count(printed.Text(), "added")
		}
		require.Error(t, child.Wait())
		promised += count
		r, err := LoadRecord(t.Context(), path, p)
		require.NoError(t, err)
		require.GreaterOrEqual(t, len(r.Entries), promised)
		promised = len(r.Entries) // the last may be there and not yet called so
	}
	assert.GreaterOrEqual(t, promised, 12)
	require.NoError(t, Add(t.Context(), path, p, Addition{By: "AK", At: "2026-11-28", Lines: []string{"step 1: done"}}))
}
