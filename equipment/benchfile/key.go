package benchfile

import (
	"fmt"
	"regexp"
	"strings"

	"minim/equipment/quantity"

	"github.com/pelletier/go-toml/v2/unstable"
)

// Limits that no file of a bench comes near, so that a hostile one costs little.
const (
	deepest = 32    // tables and lists inside each other
	most    = 10000 // keys and values
)

// part is one word of a key.
type part struct {
	name string
	at   span
}

// parts returns the words of a key, or the mistake in one of them. One that is only
// misspelt is recorded, and read as what was meant.
func (b *builder) parts(node *unstable.Node) ([]part, *Mistake) {
	var parts []part
	for it := node.Key(); it.Next(); {
		raw := it.Node().Raw
		p := part{string(it.Node().Data), span{int(raw.Offset), int(raw.Offset + raw.Length)}}
		if m := b.limit(p.at, len(parts)); m != nil {
			return nil, m
		}
		if m := b.src.spelling(p); m != nil {
			p.name = cured(p.name)
			if p.name == "" {
				return nil, m
			}
			b.root.file.keep(p.at, m)
		}
		parts = append(parts, p)
	}
	return parts, nil
}

// limit counts a key or value and refuses it where a file goes too far.
func (b *builder) limit(at span, depth int) *Mistake {
	b.count++
	switch {
	case b.count > most:
		return b.src.mistake(at, fmt.Sprintf("the file holds more than %d keys and values", most), "")
	case depth > deepest:
		return b.src.mistake(at, tooDeep, "")
	}
	return nil
}

var wellSpelt = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// spelling refuses a key that is not in lower case with hyphens. Readers that
// match keys without case would let u fill U.
func (s *source) spelling(p part) *Mistake {
	if wellSpelt.MatchString(p.name) {
		return nil
	}
	hint := ""
	if cure := cured(p.name); cure != "" {
		hint = "write `" + cure + "`"
	}
	switch {
	case p.name == "":
		return s.mistake(p.at, "the key is empty", "write a word before the =")
	case wellSpelt.MatchString(strings.ToLower(p.name)):
		return s.mistake(p.at, "`"+quantity.Shortened(p.name)+"`: keys are in lower case", hint)
	}
	return s.mistake(p.at, "`"+quantity.Shortened(p.name)+"`: keys are in lower case, their words joined by hyphens", hint)
}

// cured is the key that a misspelt one was meant to be; "" where that is not known.
func cured(name string) string {
	cure := strings.NewReplacer("_", "-", " ", "-").Replace(strings.ToLower(name))
	if !wellSpelt.MatchString(cure) {
		return ""
	}
	return cure
}

// twice refuses a key that is already there.
func (b *builder) twice(p part, first *entry) *Mistake {
	line := b.src.place(first.at.from).Line
	return b.src.mistake(p.at, fmt.Sprintf("`%s` stands twice: line %d has it already", p.name, line), "keep one of the two")
}
