package verb

import "minim/uncertainty/route"

// row is how a step of a verb is worded. A word in braces stands for what the step at hand
// has in its place, see [Do].
type row struct {
	verb route.Verb
	// do is the instruction; turned takes its place where solvent goes first on the balance.
	do, turned string
	// short says what it does, doing is its first word as something that is done.
	short, doing string
	// done are the words by which a record says that it was done, the plainest first.
	done []string
	// care is what to mind where the instrument does not say it.
	care string
	// name is its part in the name of a route.
	name string
}

const display = "read at once when the display stands still; take nothing out; no drops on the outside"

// rows are in the order in which words of records are looked up: of two verbs of one word
// the first is that of a further step.
var rows = []row{
	{verb: route.WeighAliquot, do: "zero a vessel on the {instrument} and put {amount} of the solution in it",
		turned: "zero a vessel on the {instrument}, put {ahead} of {solvent} in it, zero it again and put {amount} of the solution in",
		short:  "weigh out {amount} of the solution on the {instrument}", doing: "weighing", done: []string{"weighed out", "weighed"}, care: display, name: ", {amount}"},
	{verb: route.Weigh, do: "weigh {amount} of {solute} on the {instrument}{tare}{portions}{back}",
		short: "weigh {amount}{of solute} on the {instrument}", doing: "weighing", done: []string{"weighed"}, name: ", {amount}"},
	{verb: route.WeighUpTo, do: "add {solvent} up to {amount} in all on the {instrument}{mix}", turned: "both together are {amount} in all on the {instrument}{mix}",
		short: "make up to {amount} on the {instrument}", doing: "making", done: []string{"weighed up to"}, care: display, name: " up to {amount}"},
	{verb: route.MakeUpTo, do: "{before}make up to {amount} in the {instrument}{mix}{empty}",
		short: "make up to {amount} in the {instrument}", doing: "making", done: []string{"made up to"}, name: " in {number}"},
	{verb: route.Take, do: "{before}take {amount}{of strong} with the {instrument}{into}{after}",
		short: "take {amount}{of strong} with the {instrument}", doing: "taking", done: []string{"took"}, name: ", {number}"},
	{verb: route.TakeAll, do: "go on with all of {strong}{into}", short: "go on with all of {strong}", doing: "going", name: ", all"},
	{verb: route.Pour, do: "{before}fill the {instrument} to {amount} with the solution and pour it out{into}{after}",
		short: "pour out {amount} from the {instrument}", doing: "pouring", done: []string{"poured"}, name: ", {number}"},
	{verb: route.Measured, do: "{before}measure {amount} of {solute} with the {instrument}{into}{after}",
		short: "measure {amount}{of solute} with the {instrument}", doing: "measuring", done: []string{"measured"}, name: ", {number}"},
	{verb: route.DissolveIn, do: "{before}dissolve in {amount} of {solvent}, {measured} the {instrument}{mix}",
		short: "dissolve in {amount} with the {instrument}", doing: "dissolving", done: []string{"dissolved in"}, care: "read when the display stands still", name: " + {number}"},
	{verb: route.Strengthen, do: "{before}add {amount} of {strong} with the {instrument}{added}{mix last}",
		short: "add {amount} of {strong} with the {instrument}", doing: "adding", done: []string{"strengthened by"}, name: " + {number}"},
	{verb: route.Add, do: "{before}add {amount} of {solvent} with the {instrument}{mix last}",
		short: "add {amount} of {solvent} with the {instrument}", doing: "adding", done: []string{"added"}, care: "read when the display stands still", name: " + {number}"},
	{verb: route.AddSolute, do: "weigh {amount} of {solute} on the {instrument}{tare}{back} and dissolve it in the solution{added}{mix last}",
		short: "add {amount} of {solute}, weighed on the {instrument}", doing: "adding", done: []string{"added"}, name: " + {amount}"},
	{verb: route.UsePacket, do: "use the whole of the {packet} of {solute}{portions}", short: "use the whole of the {packet}", doing: "using", name: ", {packet}"},
	{verb: route.Start, do: "start from {stock}", short: "start from {stock}", doing: "starting", care: "look at its label and its date", name: ", {stock}"},
}

// of is the row of a verb. One without a row is a mistake of the program.
func of(v route.Verb) *row {
	for i := range rows {
		if rows[i].verb == v {
			return &rows[i]
		}
	}
	panic("verb: no words for " + string(v))
}
