package strengths

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The spellings of units that people use (common practice, no source): what each is read
// as, which is what is printed.
func TestUnitsAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]string{
		"0.650 % w/v": "0.650 % w/v", "0.650% w/v": "0.650 % w/v", "0.65 %w/v": "0.65 % w/v", "0.65 % w/V": "0.65 % w/v", "0.65 % (w/v)": "0.65 % w/v",
		"0.65 % m/v": "0.65 % w/v", "0.65 % M/V": "0.65 % w/v", "0.65 w/v %": "0.65 % w/v", "0.65 % wt/vol": "0.65 % w/v",
		"4 g/100 mL": "4 % w/v", "4 g/100 ml": "4 % w/v", "4 g/dl": "4 % w/v",
		"4 % m/m": "4 % w/w", "4 wt%": "4 % w/w", "4 wt %": "4 % w/w", "4 wt.%": "4 % w/w", "4 % (m/m)": "4 % w/w", "4 % W/W": "4 % w/w",
		"70 vol%": "70 % v/v", "70 vol.-%": "", "70 % vol": "70 % v/v", "70 % V/V": "70 % v/v", "70 % (v/v)": "70 % v/v",
		"5 g/l": "5 g/L", "5 mg/ml": "5 mg/mL", "5 ug/ml": "5 µg/mL", "5 μg/mL": "5 µg/mL", "5 µg/ml": "5 µg/mL", "5 g/dm3": "5 g/L", "5 g/dm³": "5 g/L",
		"5 M": "5 mol/L", "5 mM": "5 mmol/L", "5 µM": "5 µmol/L", "5 μM": "5 µmol/L", "5 uM": "5 µmol/L", "5 mol/l": "5 mol/L", "5 mmol/dm3": "5 mmol/L", "5 umol/l": "5 µmol/L",
		"5 U/ml": "5 U/mL", "1e-3 M": "1e-3 mol/L",
		"5 MM": "", "5 mm": "", "5 G/L": "", "5 ML/L": "", "5 %": "", "5 ppm": "", "5 w/v": "", "5 % v/w": "",
	} {
		s, err := Parse(text)
		if want == "" {
			assert.Error(t, err, text)
			continue
		}
		require.NoError(t, err, text)
		assert.Equal(t, want, s.Text, text)
		exact, err := Parse(want)
		require.NoError(t, err, want)
		assert.Equal(t, exact, s, text)
	}
}
