package main

import (
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words/clause"
	"minim/uncertainty/parallel"
)

// traceAsked is the variable of the environment that asks for the trace of a fault.
const traceAsked = "MINIM_TRACE"

// fault says in one line that the program itself is wrong, and what to send to whoever
// mends it. It returns the exit code.
func fault(w io.Writer, args []string, p *parallel.Panic) int {
	at := clause.When(p.Place != "", " at "+p.Place)
	what := strings.Join(strings.Fields(p.Error()), " ")
	fmt.Fprintf(w, "minim: fault of minim itself: %s%s, minim %s, command %s; please send this line with the files of the command to whoever gave you minim\n",
		quantity.Printable(what), at, version, commandOf(args))
	if os.Getenv(traceAsked) != "" {
		fmt.Fprintf(w, "%s\n", p.Trace)
	}
	return exitFault
}

// commandOf names the command, without the names of files.
func commandOf(args []string) string {
	if len(args) > 0 && slices.Contains(commandNames(), args[0]) {
		return "minim " + args[0]
	}
	return "minim"
}
