package note

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// joint is how several notes of one code are said at once: each of them, and all of it, in which {}
// stands for what is said of each. What all of it says besides must be the same of those
// that are joined. The numbers are those of the subject (1) and the arguments; each is "the"
// subject where nothing is said.
type joint struct{ each, all string }

// joints of a code, of which the first that joins several is taken.
var joints = map[string][]joint{
	"scatter-of-drops":         {{all: "the drops of {} scatter by 5 %%"}},
	"not-measured-there":       {{"%[2]s", "the %[1]s scatters at {} as its readings at %[3]s do (not measured there)"}},
	"cut-in-divisor":           {{"the %[1]s (%[3]s; 9999 in 10 000 are less)", "where a volume or a mass divides, errors are cut that are more than %[2]s of what is measured with {}"}},
	"cut-in-divisor-at-most":   {{"the %[1]s (%[2]s)", "where a volume or a mass divides, errors are cut that would leave nothing, or twice, of what is measured with {}"}},
	"temperature-of-setting":   {{all: "temperature of the water with which the lines of {} were set"}},
	"thickness-of-line":        {{all: "thickness of the lines on {} (bores not stated)"}},
	"pen-line":                 {{all: "the pen lines of {} are right within %[2]v mm"}},
	"scatter-of-deliveries":    {{"s = %[2]s with the %[1]s", "what is delivered scatters by {} (%[3]s reading), reading and what stays behind together"}},
	"scatter-of-setting":       {{"the %[1]s (s = %[2]s, lines every %[3]s)", "{} are set within a quarter of what lies from one line to the next"}},
	"scatter-of-retained":      {{all: "scatter of what stays in {} as they deliver"}},
	"dead-space":               {{"%[2]s in the %[1]s", "the dead space is at most {} (%[3]s, %[4]s)"}},
	"retained-in-tip":          {{all: "what stays in the tips of {}"}},
	"film-that-stays":          {{all: "the film that stays in {}, which are adjusted to contain"}},
	"film-rinsed-out":          {{all: "the film that is rinsed out of {}, beyond what they are adjusted to deliver"}},
	"last-drop-left":           {{all: "{} are made to be blown out: left in their tips, their last drops are missing from what they give; say blown-out = true in the steps where they are blown out"}},
	"last-drop":                {{"%[2]s in the tip of the %[1]s", "the last drop is about {}"}},
	"last-drop-from-memory":    {{"%[2]s in the tip of the %[1]s", "the last drop is about {} (from memory)"}},
	"retained-when-poured":     {{all: "what stays in {} when they are poured out"}},
	"keeps-when-poured":        {{"%[2]s in the %[1]s", "when it is poured out there stays about {} (unknown by half of that, and from pour to pour by a quarter)"}},
	"beyond-mark":              {{all: "what {} hold beyond their marks, being adjusted to deliver"}},
	"reading-without-division": {{all: "reading of {} (their divisions are not stated)"}},
	"reading-without-bore":     {{all: "reading of {} (the bores at their marks are not known)"}},
	"clinging-drops":           {{all: "drops clinging above the meniscus in {}"}},
	"limits-of-class":          {{all: "{} have the limits of %[2]s"}},
	"as-in-class":              {{all: "what is not stated of {} is as in %[2]s"}},
	"limit-by-practice":        {{"%[2]s in the %[1]s within %[3]s", "taken as right are {} (common practice, no standard)"}},
	"limit-at":                 {{"±%[2]s at %[3]s", "the limits of the %[1]s, {} (%[4]s)"}, {"the %[1]s (±%[2]s at %[3]s)", "the limits of {}, after %[4]s"}},
	"limit":                    {{"the %[1]s (±%[2]s)", "the limits of {}, after %[3]s"}},
	"bore":                     {{"the %[1]s (%[2]v mm)", "the bores of {}, after %[3]s"}},
	"bore-of-other":            {{"the %[1]s (%[2]v to %[3]v mm)", "{} are as wide inside at their marks as %[4]s has it"}},
	"bore-by-rule":             {{"the %[1]s (%[2]v to %[3]v mm)", "{} are at most as wide inside at their marks as %[4]s has it, and at least 0.85 of that"}},
	"bore-by-height":           {{"the %[1]s (%[2]v to %[3]v mm)", "{} are at most as wide inside at their marks as %[4]s has it, and at least as their greatest heights allow"}},
	"bore-range":               {{"the %[1]s (%[2]v to %[3]v mm)", "{} are as wide inside at their marks as %[4]s has it"}},
	"meniscus-in-plastic":      {{"the %[1]s (%[4]s)", "{} are of plastic, in which water stands flat and %[2]s does not: they hold up to so much more of it than they say (worked out for %[3]s; half of that is taken, give or take that half)"}},
	"expansion-of-glass":       {{all: "thermal expansion of {}"}},
	"between-two-lines":        {{"%[2]s", "{} lie between two lines of the %[1]s (division %[3]s)"}},
	"low-on-scale":             {{"%[2]s", "{} are less than a fifth of the %[1]s; a smaller one reads better"}},
	"sensitivity":              {{all: "error of the sensitivity of {} (span not stated)"}},
	"repeats-within-a-digit":   {{"the %[1]s (s = %[2]s)", "{} repeat within one digit"}},
	"linear-within":            {{all: "{} are linear within the larger of two digits and 0.1 %% of the load"}},
	"counted-aliquot-first":    {{all: "what is weighed on {} is counted as if the solution went in first and the whole were read from the same zero; with the solvent first, as it is told, the loads are others"}},
	"linear-in-two-parts":      {{all: "the linearity of {} errs by a curve over the range and by a part local to each load, each within the limit and equal in variance, together with the variance of a rectangle within it (so that about 8 errors in 100 lie beyond it), one and the same at equal loads (judgement)"}},
	"piston-off":               {{all: "{}, pistons over a cushion of air, deliver %[2]s within %[3]s of what they are set to, more or less (judgement; their limits hold for water alone)"}},
	"piston-unknown":           {{all: "how far off {} are with %[2]s, of which there is no figure (they are pistons over a cushion of air, and their limits hold for water alone)"}},
	"meniscus-ignored":         {{"%[1]s", "height of the menisci of {} in glass that is adjusted with water (ignored, as the prep says)"}},
	"meniscus-without-tension": {{"%[1]s", "height of the menisci of {} in glass that is adjusted with water (surface tension not known)"}},
	"meniscus-without-bore":    {{"the %[2]s", "height of the meniscus of %[1]s in {} (bores not known)"}},
	"meniscus-of-mixture":      {{"%[1]s", "the menisci of {} are each somewhere between those of their parts"}},
	"meniscus-computed":        {{"%[1]s", "the menisci of {} are known by computation within a third (none has been measured)"}},
	"own-mean-not-told":        {{"the %[1]s (%[2]s)", "the means of the readings of {}: what they are of, delivered or contained, and at which mark, is not stated"}},
	"own-mean-of-others":       {{"the %[1]s (%[2]s)", "the means of the readings of {}: they are of one piece each, and there are others"}},
	"own-mean-at-capacity":     {{"the %[1]s (%[2]s)", "the readings of {} were taken at their capacity"}},
	"weighed-water":            {{all: "the water weighed for {} had %[2]v °C within %[3]v °C, and the air about 1013 hPa"}},
	"impurity":                 {{"%[1]s", "impurities of {} (assays not stated)"}},
	"uncertainty-of-strength":  {{"%[1]s", "uncertainty of the strengths of {} (not stated)"}},
	"uncertainty-of-density":   {{"%[1]s", "uncertainty of the densities of {} (not stated)"}},
	"uncertainty-of-volume":    {{"%[1]s", "uncertainty of the volumes of {} (not stated)"}},
	"stands-open":              {{"%[2]s %[3]s (%[5]s in %[4]v min)", "while it stands open there evaporates, as %[1]s (within a factor of 2), at most so much of {}"}},
	"expands-as":               {{"%[1]s", "{} expand as %[2]s does"}},
	"expands-by-strength":      {{"%[1]s (%[2]s ethanol, %.2[3]g /°C)", "{} expand so much (OIML R 22)"}},
	"shrinks-diluted":          {{"%.2[2]g %% (within %.2[3]g %%)", "solutions of %[1]s take up {} less, as measured volumes are mixed (table of stocks: %[4]s, %[5]s)"}},
	"grows-diluted":            {{"%.2[2]g %% (within %.2[3]g %%)", "solutions of %[1]s take up {} more, as measured volumes are mixed (table of stocks: %[4]s, %[5]s)"}},
	"density-of-mixture":       {{"%[1]s", "density of {} (taken as that of %[2]s; a strength by mass hardly needs it)"}},
}

// Joined are notes in words, as [Texts] are, but that what several have in common is said once.
func Joined(list []Note) (texts []string) {
	for len(list) > 0 {
		of, text := together(list)
		texts = append(texts, text)
		rest := make([]Note, 0, len(list))
		for i, n := range list {
			if !slices.Contains(of, i) {
				rest = append(rest, n)
			}
		}
		list = rest
	}
	return texts
}

// together says the first of the notes, and those that are said with it.
func together(list []Note) (of []int, text string) {
	first := list[0]
	for _, j := range joints[first.Code] {
		before, behind := j.common(first)
		for i, n := range list {
			if n.Code != first.Code || len(n.Args) != len(first.Args) {
				continue
			}
			if b, e := j.common(n); b == before && e == behind {
				of = append(of, i)
			}
		}
		if len(of) > 1 {
			return of, before + j.series(list, of) + behind
		}
		of = nil
	}
	return []int{0}, first.String()
}

// common is what all of it says before and behind what is said of each.
func (j joint) common(n Note) (before, behind string) {
	before, behind, _ = strings.Cut(j.all, "{}")
	return formatted(before, n), formatted(behind, n)
}

// series is what is said of each. Names that end in one word have it but once: "the 0.01 g and the
// 0.1 g scale".
func (j joint) series(list []Note, of []int) string {
	each := make([]string, len(of))
	for i, at := range of {
		each[i] = "the " + list[at].Subject
		if j.each != "" {
			each[i] = formatted(j.each, list[at])
		}
	}
	n := len(each) - 1
	if j.each == "" {
		last := each[n][strings.LastIndex(each[n], " "):]
		if !slices.ContainsFunc(each, func(name string) bool { return !strings.HasSuffix(name, last) || name == "the"+last }) {
			for i := range each[:n] {
				each[i] = strings.TrimSuffix(each[i], last)
			}
		}
	}
	return strings.Join(each[:n], ", ") + " and " + each[n]
}

var place = regexp.MustCompile(`%%|%(\.\d)?\[(\d)\]([svg])`)

// formatted puts the subject and the arguments of a note into a text, which need not
// hold them all.
func formatted(text string, n Note) string {
	args := n.Args
	if n.Subject != "" {
		args = append([]any{n.Subject}, args...)
	}
	return place.ReplaceAllStringFunc(text, func(form string) string {
		part := place.FindStringSubmatch(form)
		if part[2] == "" {
			return "%"
		}
		at, _ := strconv.Atoi(part[2])
		return fmt.Sprintf("%"+part[1]+part[3], args[at-1])
	})
}
