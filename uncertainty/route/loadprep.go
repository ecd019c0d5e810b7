package route

import (
	"context"
	"errors"
	"io/fs"
	"path/filepath"

	"minim/equipment"
	"minim/equipment/benchfile"
)

// LoadPrep reads a prep file and the kit that it names, relative to its own
// folder; a kitPath that is not empty takes the place of the kit named.
func LoadPrep(path, kitPath string) (*Prep, error) {
	return LoadPrepContext(context.Background(), path, kitPath)
}

// LoadPrepContext is [LoadPrep] of files that may have to be waited for, until the context
// is done.
func LoadPrepContext(ctx context.Context, path, kitPath string) (*Prep, error) {
	root, err := benchfile.Load(ctx, path)
	if err != nil {
		return nil, err
	}
	kit, err := findKit(ctx, root, path, kitPath)
	if err != nil {
		return nil, err
	}
	return readPrep(root, kit)
}

// Changed is the prep as it was read, on its kit with changes in memory: see
// [equipment.ParseKitChanged]. No file is read again.
func (p *Prep) Changed(changes []equipment.Change) (*Prep, error) {
	kit, err := equipment.ParseKitChanged(p.Kit.File, p.Kit.Source, changes)
	if err != nil {
		return nil, err
	}
	kit.Invented = p.Kit.Invented
	changed, err := ParsePrep(p.File, p.Source, kit)
	if err != nil {
		return nil, err
	}
	changed.Changes = changes
	return changed, nil
}

// findKit loads the kit of a prep. When the prep names none, or one that is not
// there, that is a mistake in the prep, which reading on will return; the kit
// is then empty.
func findKit(ctx context.Context, root *benchfile.Table, path, kitPath string) (*equipment.Kit, error) {
	named := root.FileName("kit")
	if kitPath != "" {
		return equipment.LoadKitContext(ctx, kitPath)
	}
	if named == "" {
		if !root.Has("kit") {
			root.FailHelp("", "the prep does not name its kit", "write kit = \"bench.toml\"", benchfile.NameKit)
		}
		return new(equipment.Kit), nil
	}
	kit, err := equipment.LoadKitContext(ctx, filepath.Join(filepath.Dir(path), filepath.FromSlash(named)))
	if errors.Is(err, fs.ErrNotExist) {
		root.FailHelp("kit", "there is no file "+named, "it is looked for beside the prep", benchfile.OtherKit)
		return new(equipment.Kit), nil
	}
	return kit, err
}

// ParsePrep reads the text of a prep file that is made with the given kit; name
// stands for the file in messages.
func ParsePrep(name string, data []byte, kit *equipment.Kit) (*Prep, error) {
	root, err := benchfile.Parse(name, data)
	if err != nil {
		return nil, err
	}
	root.FileName("kit")
	return readPrep(root, kit)
}
