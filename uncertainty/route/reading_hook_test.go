package route

import (
	"context"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/uncertainty"
)

// Those of package bench, which stands above and reads kits and preps from text. A test
// outside of this package sets them.
var (
	Compare    func(ctx context.Context, p *Prep, name string, s uncertainty.Settings) (*Comparison, error)
	CompareTo  func(ctx context.Context, p *Prep, use string, s uncertainty.Settings) (*Comparison, error)
	HalfWidth  func(p *Prep) float64
	Cost       func(p *Prep, r *Result) (equipment.Price, bool)
	ParseKit   func(name string, data []byte) (*equipment.Kit, error)
	ParsePrep  func(name string, data []byte, kit *equipment.Kit) (*Prep, error)
	LoadKit    func(path string) (*equipment.Kit, error)
	LoadPrep   func(path, kitPath string) (*Prep, error)
	Changed    func(p *Prep, changes []benchfile.Change) (*Prep, error)
	SaveRoutes func(text []byte, kit string, routes []*Route) ([]byte, error)
	Written    func(s *Step) []string
)
