package main

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// found is the path of a program, or the test is skipped.
func found(t *testing.T, program string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil {
		t.Skip("there is no " + program + " here")
	}
	return path
}

// Every command and every option stands in the completion of each shell, and in the manual page.
func TestCompletionsAreWhole(t *testing.T) {
	for _, shell := range shells {
		script := output(t, "help", "completion", shell)
		for _, cmd := range commands() {
			assert.Contains(t, script, cmd.name, shell)
			newFlags(cmd.name, cmd.job).VisitAll(func(f *pflag.Flag) {
				assert.Contains(t, script, map[string]string{"bash": "--", "zsh": "--", "fish": " -l "}[shell]+f.Name, shell)
			})
		}
		assert.Contains(t, script, "json markdown html csv")
	}
	manual := output(t, "help", "man")
	for _, d := range describe().Commands {
		assert.Contains(t, manual, ".SS "+inManual(d.Usage))
		for _, o := range d.Options {
			assert.Contains(t, manual, `\fB`+inManual("--"+o.Name)+`\fR`)
		}
	}
	for _, args := range [][]string{{"help", "completion"}, {"help", "completion", "csh"}, {"help", "man", "more"}, {"help", "words", "more"}} {
		var out, errs bytes.Buffer
		assert.Equal(t, exitUsage, run(context.Background(), args, &out, &errs), "%v", args)
		assert.Empty(t, out.String())
	}
}

// Each shell reads its script.
func TestShellsReadTheirCompletion(t *testing.T) {
	for _, shell := range shells {
		t.Run(shell, func(t *testing.T) {
			path, script := found(t, shell), t.TempDir()+"/script"
			require.NoError(t, os.WriteFile(script, []byte(output(t, "help", "completion", shell)), 0o644))
			said, err := exec.Command(path, "-n", script).CombinedOutput()
			require.NoError(t, err, string(said))
			assert.Empty(t, string(said))
		})
	}
}

// Bash completes commands, options, and values of options that are listed.
func TestBashCompletes(t *testing.T) {
	bash, script := found(t, "bash"), t.TempDir()+"/script"
	require.NoError(t, os.WriteFile(script, []byte(output(t, "help", "completion", "bash")), 0o644))
	for typed, want := range map[string]string{
		"minim com": "compare", "minim plan --pref": "--prefer", "minim plan --prefer tigh": "tightest", "minim buy --format js": "json", "minim help comp": "compare completion",
		"minim help completion fi": "fish", "minim compare --rou": "--route",
	} {
		words := strings.Fields(typed)
		said, err := exec.Command(bash, append([]string{"-c", `source "$0"; COMP_WORDS=("$@"); COMP_CWORD=$(($#-1)); _minim; echo "${COMPREPLY[@]}"`, script}, words...)...).CombinedOutput()
		require.NoError(t, err, string(said))
		assert.Equal(t, want, strings.TrimSpace(string(said)), typed)
	}
}

// The manual page is set without a warning.
func TestManualIsSet(t *testing.T) {
	groff := found(t, "groff")
	page := exec.Command(groff, "-man", "-Tutf8", "-ww")
	page.Stdin = strings.NewReader(output(t, "help", "man"))
	var out, errs bytes.Buffer
	page.Stdout, page.Stderr = &out, &errs
	require.NoError(t, page.Run(), errs.String())
	assert.Empty(t, errs.String())
	assert.Contains(t, out.String(), "Example:")
}
