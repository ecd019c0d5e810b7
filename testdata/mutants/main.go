// The program mutants changes the physics and the numbers on paper in a copy of the
// project, one place at a time, and reports whether the tests of the package that owns the
// place notice. It fails unless all do:
//
//	go run ./testdata/mutants            all
//	go run ./testdata/mutants evaporate  those whose file or text holds a word
//	go run ./testdata/mutants -find      only looks whether each text is found once
package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

func main() {
	word := strings.Join(os.Args[1:], " ")
	copied, err := os.MkdirTemp("", "mutants")
	if err == nil {
		err = os.CopyFS(copied, os.DirFS("."))
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(2)
	}
	alive := 0
	for _, m := range mutants {
		if word != "-find" && !strings.Contains(m.file+" "+m.old, word) {
			continue
		}
		start := time.Now()
		what, ok := m.try(copied, word == "-find")
		if !ok {
			alive++
		}
		fmt.Printf("%-15s %4.0f s  %s, %s: %q -> %q\n", what, time.Since(start).Seconds(), m.file, m.function, m.old, m.new)
	}
	os.RemoveAll(copied)
	fmt.Println(alive, "not killed")
	if alive > 0 {
		os.Exit(1)
	}
}

// try changes one place of the copy, runs the tests of its package, and puts the file back.
func (m mutant) try(dir string, onlyFind bool) (what string, ok bool) {
	path := filepath.Join(dir, m.file)
	before, err := os.ReadFile(path)
	if err != nil || strings.Count(string(before), m.old) != 1 {
		return "text not found", false
	}
	if onlyFind {
		return "found", true
	}
	defer os.WriteFile(path, before, 0o644)
	if err := os.WriteFile(path, []byte(strings.Replace(string(before), m.old, m.new, 1)), 0o644); err != nil {
		return err.Error(), false
	}
	cmd := exec.Command("go", "test", "-short", "-failfast", "-vet=off", "-timeout", "5m", "-run", m.run, "./"+testsOf(dir, filepath.Dir(m.file)))
	cmd.Dir = dir
	switch out, err := cmd.CombinedOutput(); {
	case err == nil:
		return "SURVIVED", false
	case !strings.Contains(string(out), "--- FAIL"):
		return "no test failed", false // it does not build, or came to no end
	}
	return "killed", true
}

// testsOf is where the tests of a package stand: in it, or in the one above.
func testsOf(dir, path string) string {
	if tests, _ := filepath.Glob(filepath.Join(dir, path, "*_test.go")); len(tests) > 0 {
		return path
	}
	return filepath.Dir(path)
}
