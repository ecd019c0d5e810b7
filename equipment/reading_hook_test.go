package equipment

// Those of package bench, which stands above and reads kits from text. A test outside of
// this package sets them.
var (
	ParseKit       func(name string, data []byte) (*Kit, error)
	CandidateKinds func() []string
)
