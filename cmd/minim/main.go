// Command minim says how good the strength of a small, dilute solution will be
// by each way of making it on a given bench.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime/debug"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"minim/equipment/benchfile"
	"minim/report/words/clause"
	"minim/uncertainty/parallel"
)

// version of the program.
const version = "0.1.0"

// Exit codes.
const (
	exitDone   = 0
	exitFailed = 1
	exitUsage  = 2
	exitFault  = 3 // of the program itself
)

func main() {
	debug.SetGCPercent(collectAt)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	code := make(chan int, 1)
	go func() { code <- run(ctx, os.Args[1:], os.Stdout, os.Stderr) }()
	select {
	case c := <-code:
		os.Exit(c)
	case <-ctx.Done():
		os.Exit(stopped(code, os.Stderr))
	}
}

// collectAt is how much garbage there may be, in percent of what is in use, before it is collected: most
// commands end before they have much, and a collection costs more than the memory.
const collectAt = 400

// patience is how long an interrupted command may take to come to a stop by itself.
const patience = time.Second

// stopped waits for an interrupted command, and leaves it where it takes too long: files
// are written whole or not at all.
func stopped(code <-chan int, err io.Writer) int {
	select {
	case c := <-code:
		return c
	case <-time.After(patience):
		complain(err, context.Canceled)
		return exitFailed
	}
}

// console is where a command writes.
type console struct{ out, err io.Writer }

// command is one of the commands of minim.
type command struct {
	name string
	// most is how many files it takes.
	most int
	job
}

// job is the options of a command, what is wrong with them, and what it does with them and with
// the files that are named; help.txt has the words.
type job interface {
	declare(flags *pflag.FlagSet)
	check(c call) error
	run(ctx context.Context, c call) error
}

// commands in the order of the help, with options that nobody has set.
func commands() []command {
	return []command{
		{"compare", 1, new(compareOptions)},
		{"plan", 1, new(planOptions)},
		{"buy", 1, new(buyOptions)},
		{"made", 2, new(madeOptions)},
		{"rescue", 1, new(rescueOptions)},
		{"report", 1, new(paperOptions)},
		{"sheet", 1, new(paperOptions)},
		{"label", 1, new(paperOptions)},
		{"kit", 1, new(kitOptions)},
		{"new", 1, new(newOptions)},
		{"help", 0, nil}, // reads its arguments by itself
		{"version", 0, nil},
	}
}

// run carries out a command line and returns the exit code.
func run(ctx context.Context, args []string, out, err io.Writer) (code int) {
	defer func() {
		if v := recover(); v != nil {
			code = fault(err, args, parallel.Caught(v))
		}
	}()
	c := console{out, err}
	failure := dispatch(ctx, args, c)
	if failure == nil {
		return exitDone
	}
	complain(newCutting(c.err, args), failure)
	var usage *usageError
	if errors.As(failure, &usage) {
		return exitUsage
	}
	return exitFailed
}

func dispatch(ctx context.Context, args []string, c console) error {
	switch {
	case len(args) == 0 || args[0] == "-h" || args[0] == "--help":
		return help(nil, c.out)
	case args[0] == "--version":
		return printVersion(c.out)
	case args[0] == "help":
		return help(args[1:], c.out)
	case strings.HasPrefix(args[0], "-"):
		return &usageError{fmt.Sprintf("the option %s comes before the command", args[0]), "write the command first, as in minim compare --seed 2"}
	}
	cmd, err := commandCalled(args[0])
	if err != nil {
		return err
	}
	flags := newFlags(cmd.name, cmd.job)
	files, err := parse(flags, args[1:], cmd.most)
	switch {
	case errors.Is(err, pflag.ErrHelp):
		return printCommandHelp(c.out, flags)
	case err != nil:
		return err
	case cmd.job == nil: // help is given above
		return printVersion(c.out)
	}
	this := call{c, files, flags}
	if err := cmd.check(this); err != nil {
		return err
	}
	return cmd.run(ctx, this)
}

func commandCalled(name string) (command, error) {
	for _, cmd := range commands() {
		if cmd.name == name {
			return cmd, nil
		}
	}
	names := commandNames()
	return command{}, unknown(fmt.Sprintf("there is no command %q", name), name, names, "%s", "the commands are "+strings.Join(names, ", "))
}

func commandNames() []string {
	return clause.Each(commands(), func(cmd command) string { return cmd.name })
}

// usageError is a command line that is wrong.
type usageError struct{ message, hint string }

func (e *usageError) Error() string { return e.message }

// hinted is a failure with a cure.
type hinted struct {
	err  error
	hint string
}

func (e *hinted) Error() string { return e.err.Error() }

func (e *hinted) Unwrap() error { return e.err }

// keptError is a failure after entries were added to the record in a file.
type keptError struct {
	err  error
	file string
}

func (e *keptError) Error() string { return e.err.Error() }

func (e *keptError) Unwrap() error { return e.err }

// complain writes an error, a hint when there is one, and what was written all the same.
func complain(w io.Writer, err error) {
	var kept *keptError
	if errors.As(err, &kept) {
		defer tell(w, "what was added to %s stays there", kept.file)
	}
	if errors.Is(err, context.Canceled) {
		tell(w, "stopped")
		return
	}
	message, hint := strings.Join(linesOf(err), "\n"), ""
	told, more := benchfile.Told(err)
	var (
		usage   *usageError
		cured   *hinted
		mistake *benchfile.Mistake
	)
	switch {
	case errors.As(err, &usage):
		hint = usage.hint
	case len(told) > 1:
		for _, m := range told {
			complain(w, m)
		}
		if more != "" {
			tell(w, "error: %s", more)
		}
		return
	case errors.As(err, &mistake):
		message, hint = mistake.Report(), mistake.Hint+helps[mistake.Help].hint
	case errors.As(err, &cured):
		hint = cured.hint
	}
	fmt.Fprintf(w, "minim: error: %s\n", message)
	if hint != "" {
		tell(w, "hint: %s", hint)
	}
}
