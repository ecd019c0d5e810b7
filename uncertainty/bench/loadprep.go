package bench

import (
	"context"
	"errors"
	"io/fs"
	"path/filepath"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/uncertainty/route"
)

// LoadPrep reads a prep file and the kit that it names, relative to its own folder; a
// kitPath that is not empty takes the place of the kit named. The files may have to be
// waited for, until the context is done.
func LoadPrep(ctx context.Context, path, kitPath string) (*route.Prep, error) {
	data, err := benchfile.Read(ctx, path)
	if err != nil {
		return nil, err
	}
	root, err := benchfile.Parse(path, data)
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
