package words

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/kits"
	"minim/report/words/note"
	"minim/uncertainty/route"
)

// finding is in what a route, or a batch, falls short of what was asked for. It is decided
// in one place, by which screens and papers go.
type finding string

// The findings; nothing is found where nothing falls short, or no tolerance is given.
const (
	nothingFound finding = ""
	inDoubt      finding = "IN DOUBT"
	notPure      finding = "NOT PURE"
	saysNothing  finding = "SAYS ALMOST NOTHING"
	tooLittle    finding = "MAKES TOO LITTLE"
	belowChance  finding = "NOT GOOD ENOUGH" // a route
	notSure      finding = "NOT SURE TO BE INSIDE"
	outside      finding = "OUTSIDE"
)

// findingOf judges a result, of a route that could be gone or of a batch that was made.
func findingOf(p *route.Prep, r *route.Result, made bool) finding {
	switch {
	case !r.Informative:
		return saysNothing
	case !made && !r.Enough(p.Volume):
		return tooLittle
	case slices.ContainsFunc(r.Notes.Warnings, func(n note.Note) bool { return n.Code == onlyDissolved }):
		return notPure
	case len(p.Tolerances) == 0 || r.Chance() >= p.LeastChance:
		return finding(when(len(note.Doubts(r.Notes.Warnings)) > 0, string(inDoubt)))
	case !made:
		return belowChance
	case isOutside(p, r):
		return outside
	}
	return notSure
}

// isOutside reports whether the strength itself, as it is quoted, is not permitted.
func isOutside(p *route.Prep, r *route.Result) bool {
	return len(p.Tolerances) > 0 && r.Chance() < p.LeastChance && !p.Tolerances[0].Limits.Permits(r.Quoted.Value)
}

// findingText is what is found, with the chance and what was asked for; "" where nothing
// falls short.
func findingText(p *route.Prep, r *route.Result, made bool) string {
	f := findingOf(p, r, made)
	var parts []string
	switch f {
	case nothingFound:
		return ""
	case inDoubt, notPure:
		return string(f) + ": " + strings.Join(note.Texts(note.Doubts(r.Notes.Warnings)), "; ")
	case saysNothing:
		parts = append(parts, r.Uninformative.String())
	case tooLittle:
		parts = append(parts, fmt.Sprintf("%s of the %s wanted", volume(r.MadeML), quantity.Millilitres(p.Volume)))
	}
	if len(p.Tolerances) > 0 {
		parts = append(parts, chanceAsked(p, r, made))
	}
	return string(f) + ": " + strings.Join(parts, "; ")
}

// chanceAsked is the chance of being inside the first tolerance beside what was asked for.
func chanceAsked(p *route.Prep, r *route.Result, made bool) string {
	t := p.Tolerances[0]
	what, verb := either(made, "this batch", "the solution wanted"), either(t.Stated, "is", "lies")
	return fmt.Sprintf("the chance that %s %s %s is %s in 100, %s asked for", what, verb, Within(t), chanceOf(p, r), asked(p.LeastChance)) + CloseCall(p, r)
}

// VerdictWord says how far the route can be recommended.
func VerdictWord(c *route.Comparison) string {
	switch findingOf(c.Prep, &c.Results[c.Verdict.Use], false) {
	case tooLittle:
		return fmt.Sprintf("NEAREST (none makes %s)", quantity.Millilitres(c.Prep.Volume))
	case saysNothing:
		return "NEAREST (none says much about the amount)"
	case belowChance:
		return fmt.Sprintf("NEAREST (none reaches %s in 100)", asked(c.Prep.LeastChance))
	case notPure:
		return "NEAREST (what it starts with is not pure)"
	case inDoubt:
		return either(len(c.Prep.Tolerances) == 0, "NEAREST THE TARGET, BUT IN DOUBT", "USE, BUT IN DOUBT")
	}
	return either(len(c.Prep.Tolerances) == 0, "NEAREST THE TARGET (no tolerance given)", "USE")
}

// MadeWord is the finding about a batch.
func MadeWord(b *Batch) string {
	switch found := findingOf(b.Prep, &b.AsMade, true); {
	case !b.Any():
		return "NOTHING DONE YET"
	case !b.Finished():
		return "NOT FINISHED"
	case found == inDoubt:
		return either(len(b.Prep.Tolerances) == 0, "MADE, BUT IN DOUBT", "INSIDE, BUT IN DOUBT")
	case found != nothingFound:
		return string(found)
	case len(b.Prep.Tolerances) == 0:
		return "MADE (no tolerance given)"
	}
	return "INSIDE"
}

// finding is that about the route or the batch of a paper, in words.
func (p *Paper) finding() string { return findingText(p.Prep, p.result(), p.Batch != nil) }

// ownMeanFar is the code of own readings that lie too far off, and count, and onlyDissolved of the
// doubt that what was weighed pure is a solution.
const ownMeanFar, onlyDissolved = "own-mean-far", "only-dissolved"

// bars are the warnings at the top of every paper: that it is about the example that comes
// with the program, in what it falls short, what puts it in doubt, and which instrument is not as it
// should be.
func (p *Paper) bars() (list clauses) {
	list.Put("", kits.Invented(p.Prep.Kit))
	list.Put("", p.finding())
	said := slices.Contains([]finding{inDoubt, notPure}, findingOf(p.Prep, p.result(), p.Batch != nil))
	for _, n := range p.result().Notes.Warnings {
		if n.Code == ownMeanFar || !said && note.Contains(note.Doubts(p.result().Notes.Warnings), n) {
			list.Put("", capital(n.String()))
		}
	}
	return list
}

// headed starts a document with what may not meet, its warnings, and that the route aims
// elsewhere.
func (p *Paper) headed(title, below string) []page.Block {
	list := stopBars(p.Prep)
	for _, text := range p.bars() {
		list = append(list, bar(text))
	}
	list = append(list, page.Title{Text: title, Below: below})
	if r := p.result(); p.Batch == nil && r.Elsewhere != nil && gains(p.Prep, r) {
		list = append(list, quotation("First: this route "+elsewhereWords(p.Prep, r)+"."))
	}
	return list
}
