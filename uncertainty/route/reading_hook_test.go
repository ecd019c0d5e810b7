package route

import (
	"minim/equipment"
	"minim/equipment/benchfile"
)

// Those of package bench, which stands above and reads kits and preps from text. A test
// outside of this package sets them.
var (
	ParseKit   func(name string, data []byte) (*equipment.Kit, error)
	ParsePrep  func(name string, data []byte, kit *equipment.Kit) (*Prep, error)
	LoadKit    func(path string) (*equipment.Kit, error)
	LoadPrep   func(path, kitPath string) (*Prep, error)
	Changed    func(p *Prep, changes []benchfile.Change) (*Prep, error)
	SaveRoutes func(text []byte, kit string, routes []*Route) ([]byte, error)
	Written    func(s *Step) []string
)
