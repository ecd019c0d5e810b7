package bench

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

func readPrep(root *benchfile.Table, kit *equipment.Kit) (*route.Prep, error) {
	if holds(root, kitTables()...) {
		return nil, root.Refuse("this is a kit, not a prep", "a prep names its kit: kit = \"bench.toml\"")
	}
	if holds(root, "entries") {
		return nil, root.Refuse("this is a record, not a prep", "the prep is the file that it was begun for", benchfile.FollowRecord)
	}
	p := readPrepOn(root, kit)
	prepReader{p}.needDensities(root)
	if err := root.Err(); err != nil {
		return nil, err
	}
	return p, nil
}

// readPrepOn reads a prep that is made on a kit. Mistakes are recorded in the table.
func readPrepOn(root *benchfile.Table, kit *equipment.Kit) *route.Prep {
	root.Need("target", "volume", "solute", "solvent")
	p := prepReader{route.NewPrep(kit)}
	p.File, p.Source = root.Source()
	p.Digest = sha256Of(p.Source)
	p.Title, p.Note = root.Text("title"), root.Text("note")
	p.Volume = root.Positive("volume", quantity.Volume)
	if err := route.CheckVolume(p.Volume); p.Volume != 0 && err != nil {
		root.FailWith("volume", err)
	}
	p.Bench = readBench(root.Table("bench"))
	p.Solute = readSolute(root.Table("solute"))
	p.Solvent = readSolvent(root.Table("solvent"))
	p.readTarget(root)
	for _, t := range root.Tables("stock") {
		p.Stocks = append(p.Stocks, p.readStock(t)) // whose density may turn tolerances into strengths
	}
	p.Tolerances = p.readTolerances(root)
	p.readLeastChance(root)
	if root.Has("least-chance") && !root.Has("tolerance") && !root.Has("not-above") && !root.Has("not-below") {
		root.FailFor(root, []string{"tolerance", "not-above", "not-below"}, "least-chance", "there is no tolerance to be inside of", "state a tolerance as well")
	}
	for _, t := range root.Tables("packet") {
		p.Packets = append(p.Packets, p.readPacket(t))
	}
	p.Solute.Solubility = p.readSolubility(root.Table("solute"))
	for _, t := range root.Tables("route") {
		p.Routes = append(p.Routes, p.readRoute(t))
	}
	for _, t := range root.Tables("hazard") {
		p.Hazards = append(p.Hazards, p.readHazard(t))
	}
	p.Ladder = p.readLadder(root)
	p.readPrices(root)
	p.readLimits(root)
	return p.Prep
}

// prepReader reads what of a prep rests on what of it was read before.
type prepReader struct{ *route.Prep }

// readTarget reads the strength wanted.
func (p prepReader) readTarget(root *benchfile.Table) {
	text := root.Text("target")
	if text == "" {
		return
	}
	s, err := strengths.Parse(text)
	if err != nil {
		root.FailWith("target", err)
		return
	}
	p.Target = s
	p.strength(root, "target")
}

// strength reads a strength that must be convertible to g/mL. It is the zero Strength
// where it is not, or cannot be for a mistake elsewhere.
func (p prepReader) strength(t *benchfile.Table, key string) strengths.Strength {
	text := t.Text(key)
	if text == "" {
		return strengths.Strength{}
	}
	s, err := p.ParseStrength(text)
	if err != nil {
		failStrength(t, key, err)
		return strengths.Strength{}
	}
	return s
}

// concentration is a strength in g/mL; that it can be converted, [prepReader.strength] has
// seen.
func (p prepReader) concentration(s strengths.Strength) float64 {
	if s.Value == 0 {
		return 0
	}
	concentration, _ := p.Concentration(s.Text)
	return concentration
}

func readBench(t *benchfile.Table) (b route.Bench) {
	b.Temperature, b.Within = readTemperature(t, b.Temperature, b.Within)
	b.Reading = equipment.Reading(t.Word("reading", equipment.Readings()...))
	b.MeniscusIgnored = t.Word("meniscus", "counted", "ignored") == "ignored"
	b.Closed = t.Word("vessels", "open", "closed") == "closed"
	if t.Has("within") {
		t.Need("temperature")
	}
	return b
}

// readTemperature reads the temperature of the bench and the half-width within which it
// is known; what is not there stays as it was.
func readTemperature(t *benchfile.Table, temperature, within equipment.Stated) (equipment.Stated, equipment.Stated) {
	if t.Has("temperature") {
		temperature = equipment.Stated{Value: t.Quantity("temperature", quantity.Temperature), Known: true}
	}
	if t.Has("within") {
		within = equipment.Stated{Value: t.NotNegative("within", quantity.Temperature), Known: true}
	}
	limit, most := quantity.Limits.Temperature, quantity.Limits.Within.Most
	if temperature.Known {
		plausible(t, "temperature", temperature.Value, limit, fmt.Sprintf("a bench at %v °C is not likely", temperature.Value), fmt.Sprintf("state it in °C, between %v and %v", limit.Least, limit.Most))
	}
	plausible(t, "within", within.Value, quantity.Limits.Within, fmt.Sprintf("a bench that varies by %v °C is not likely", within.Value), fmt.Sprintf("state a half-width of at most %v °C", most))
	return temperature, within
}

// LoadPrep reads a prep file and the kit that it names, relative to its own folder; a
// kitPath that is not empty takes the place of the kit named. The files may have to be
// waited for, until the context is done.
func LoadPrep(ctx context.Context, path, kitPath string) (*route.Prep, error) {
	root, err := load(ctx, path, benchfile.Parse)
	if err != nil {
		return nil, err
	}
	kit, err := findKit(ctx, root, path, kitPath)
	if err != nil {
		return nil, err
	}
	return readPrep(root, kit)
}

// findKit loads the kit of a prep. When the prep names none, or one that is not
// there, that is a mistake in the prep, which reading on will return; the kit
// is then empty.
func findKit(ctx context.Context, root *benchfile.Table, path, kitPath string) (*equipment.Kit, error) {
	named := root.FileName("kit")
	if kitPath != "" {
		return LoadKit(ctx, kitPath)
	}
	if named == "" {
		if !root.Has("kit") {
			root.Fail("", "the prep does not name its kit", "write kit = \"bench.toml\"", benchfile.NameKit)
		}
		return new(equipment.Kit), nil
	}
	kit, err := LoadKit(ctx, filepath.Join(filepath.Dir(path), filepath.FromSlash(named)))
	if errors.Is(err, fs.ErrNotExist) {
		root.Fail("kit", "there is no file "+named, "it is looked for beside the prep", benchfile.OtherKit)
		return new(equipment.Kit), nil
	}
	return kit, err
}

// ParsePrep reads the text of a prep file that is made with the given kit; name
// stands for the file in messages.
func ParsePrep(name string, data []byte, kit *equipment.Kit) (*route.Prep, error) {
	root, err := benchfile.Parse(name, data)
	if err != nil {
		return nil, err
	}
	root.FileName("kit")
	return readPrep(root, kit)
}
