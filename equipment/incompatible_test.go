package equipment

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// incompatibleNames are names of the two sides of each row, as bottles bear them: trade
// names, systematic names, formulas, both spellings (common practice, no source).
var incompatibleNames = []struct {
	a, b  string // the row
	names [2][]string
}{
	{"hypochlorite", "any acid", [2][]string{
		{"bleach", "household bleach 5 %", "Javel water", "Clorox", "Domestos", "chloramine-T", "Sodium hypochlorite", "calcium hypochlorite", "NaOCl", "Ca(OCl)2"},
		{"vinegar", "citric acid", "hydrochloric acid", "muriatic acid 30 %", "Acetic Acid, glacial", "HCl", "sodium bisulphate", "sodium hydrogen sulfate", "ammonium bifluoride", "an acid", "acidified water", "sulfuric acid", "spirits of salt"}}},
	{"hypochlorite", "ammonia", [2][]string{{"bleach", "sodium hypochlorite"}, {"ammonia", "ammonia water 25 %", "NH3", "ammonium hydroxide", "ammonium chloride", "triethanolamine", "ethylenediamine"}}},
	{"hypochlorite", "ethanol", [2][]string{{"bleach", "hypochlorite"}, {"ethanol", "ethanol 96 %", "methylated spirits", "isopropanol", "propan-2-ol", "2-propanol", "isopropyl alcohol", "IMS", "acetone", "methanol"}}},
	{"hypochlorite", "hydrogen peroxide", [2][]string{{"bleach", "hypochlorite"}, {"hydrogen peroxide", "H2O2", "H₂O₂", "peroxide 30 %"}}},
	{"hypochlorite", "formaldehyde", [2][]string{{"bleach", "hypochlorite"}, {"formaldehyde", "formalin", "glycerol", "glycerine", "sucrose", "toluene", "white spirit"}}},
	{"nitric acid", "alcohols", [2][]string{{"nitric acid", "HNO3", "nitric acid 65 %", "aqua fortis"}, {"ethanol", "methanol", "acetone", "propanone", "acetic acid", "glycerol", "toluene", "turpentine", "n-hexane", "industrial methylated spirit"}}},
	{"nitric acid", "copper", [2][]string{{"nitric acid", "HNO3"}, {"copper", "brass filings", "silver", "zinc powder", "iron wool"}}},
	{"nitrate", "sulphuric acid", [2][]string{{"potassium nitrate", "silver nitrate", "KNO3"}, {"sulphuric acid", "sulfuric acid", "H2SO4", "oil of vitriol"}}},
	{"nitrite", "any acid", [2][]string{{"sodium nitrite", "NaNO2"}, {"acetic acid", "hydrochloric acid", "vinegar", "some acid"}}},
	{"hydrogen peroxide", "acetone", [2][]string{{"hydrogen peroxide", "peroxide", "H2O2", "sodium percarbonate"}, {"acetone", "ethanol", "methylated spirit", "isopropanol", "white spirit", "glycerol"}}},
	{"hydrogen peroxide", "copper", [2][]string{{"hydrogen peroxide", "H2O2"}, {"copper", "copper(II) sulphate", "iron(III) chloride", "ferrous sulfate", "silver nitrate", "sodium hydroxide", "caustic soda", "an alkali"}}},
	{"hydrogen peroxide", "acetic acid", [2][]string{{"hydrogen peroxide", "H2O2"}, {"acetic acid", "vinegar", "ethanoic acid"}}},
	{"hydrogen peroxide", "sulphuric acid", [2][]string{{"hydrogen peroxide", "H2O2"}, {"sulphuric acid", "H2SO4"}}},
	{"cyanide", "any acid", [2][]string{{"potassium cyanide", "KCN", "sodium cyanide"}, {"acetic acid", "citric acid", "HCl", "an acid"}}},
	{"sulphide", "any acid", [2][]string{{"sodium sulphide", "sodium sulfide", "ammonium sulfide", "potassium polysulphide", "liver of sulphur", "Na2S"}, {"hydrochloric acid", "vinegar", "an acid"}}},
	{"sulphite", "any acid", [2][]string{{"sodium sulphite", "sodium sulfite", "sodium metabisulphite", "potassium metabisulfite", "sodium dithionite", "sodium thiosulphate", "Na2S2O4"}, {"acetic acid", "citric acid", "HCl"}}},
	{"carbonate", "any acid", [2][]string{{"sodium carbonate", "sodium hydrogencarbonate", "baking soda", "calcium carbonate", "NaHCO3"}, {"acetic acid", "citric acid", "HCl"}}},
	{"strong acid", "strong alkali", [2][]string{{"hydrochloric acid", "sulphuric acid", "nitric acid", "perchloric acid", "an acid"}, {"sodium hydroxide", "caustic soda", "NaOH", "lye", "potassium hydroxide", "caustic potash", "an alkali"}}},
	{"sulphuric acid", "water", [2][]string{}}, // the order alone
	{"ammonia", "iodine", [2][]string{{"ammonia", "NH3"}, {"iodine", "bromine", "chlorine"}}},
	{"silver salts", "ammonia", [2][]string{{"silver nitrate", "AgNO3", "silver oxide"}, {"ammonia", "sodium hydroxide", "ammonium hydroxide"}}},
	{"permanganate", "glycerol", [2][]string{{"potassium permanganate", "KMnO4"}, {"glycerol", "ethylene glycol", "ethanol", "acetic acid", "sulphuric acid"}}},
	{"permanganate", "hydrochloric acid", [2][]string{{"potassium permanganate", "KMnO4"}, {"hydrochloric acid", "muriatic acid", "HCl"}}},
	{"chromic acid", "acetic acid", [2][]string{{"chromic acid", "chromium trioxide", "CrO3"}, {"acetic acid", "ethanol", "glycerol", "acetone", "hexane"}}},
	{"formaldehyde", "hydrochloric acid", [2][]string{{"formaldehyde", "formalin"}, {"hydrochloric acid", "HCl"}}},
	{"formaldehyde", "hydrogen peroxide", [2][]string{{"formaldehyde", "formalin"}, {"hydrogen peroxide", "H2O2"}}},
	{"acetone", "chloroform", [2][]string{{"acetone", "propanone"}, {"chloroform", "trichloromethane", "sodium hydroxide"}}},
	{"aluminium", "alkali", [2][]string{{"aluminium", "aluminum foil", "zinc", "zinc powder"}, {"sodium hydroxide", "hydrochloric acid", "citric acid", "an alkali"}}},
	{"azide", "any acid", [2][]string{{"sodium azide", "NaN3"}, {"hydrochloric acid", "vinegar", "citric acid", "an acid"}}},         // from memory
	{"chlorite", "any acid", [2][]string{{"sodium chlorite", "NaClO2"}, {"hydrochloric acid", "vinegar", "citric acid", "an acid"}}}, // from memory
}

// The rows are those of the table of 28 pairs and two more; the last stands for the hazard words alone.
func TestIncompatibleTable(t *testing.T) {
	rows := Incompatibles()
	require.Len(t, rows, len(incompatibleNames)+1)
	for i, row := range rows {
		assert.NotEmpty(t, row.Happens, "row %d", i)
		assert.Contains(t, []string{"two sources", "one source", "from memory"}, row.Trust, "row %d", i)
		assert.Equal(t, row.Source == "", row.Trust == "from memory" && i < len(incompatibleNames), "row %d: %q", i, row.Source)
		if i < len(incompatibleNames) {
			assert.True(t, strings.HasPrefix(row.A, incompatibleNames[i].a) && strings.HasPrefix(row.B, incompatibleNames[i].b), "row %d: %s, %s", i, row.A, row.B)
		}
		for _, group := range append(row.GroupsA, row.GroupsB...) {
			assert.Contains(t, lexicon().groups, group)
		}
	}
}

func TestEveryIncompatiblePairIsSeenBothWaysRound(t *testing.T) {
	rows := Incompatibles()
	for i, test := range incompatibleNames {
		for _, a := range test.names[0] {
			for _, b := range test.names[1] {
				for _, list := range [][]Meeting{Meet(Recognise(a), Recognise(b)), Meet(Recognise(b), Recognise(a))} {
					assert.True(t, holds(list, rows[i]), "%s and %s are %s and %s", a, b, rows[i].A, rows[i].B)
				}
			}
		}
	}
}

func holds(list []Meeting, row Incompatible) bool {
	for _, m := range list {
		if m.A == row.A && m.B == row.B {
			return true
		}
	}
	return false
}

// Water poured on sulphuric acid is a matter of order: else it could not be diluted.
func TestSulphuricAcidMayBeDiluted(t *testing.T) {
	assert.Empty(t, incompatibles()[18].GroupsA, "the order alone")
	assert.Empty(t, Meet(Recognise("sulphuric acid, concentrated", "acid", "corrosive"), Recognise("water")))
}

func TestHazardWordsAreSeenAsWell(t *testing.T) {
	for _, test := range []struct {
		a, b   string // hazard words
		clash  bool
		reason string
	}{
		{"oxidiser", "flammable", true, `by the hazard word "oxidiser"`},
		{"oxidizer", "highly flammable", true, `by the hazard word "flammable"`},
		{"acid", "alkali", true, `by the hazard word "acid"`},
		{"Acid", "Alkali", true, `by the hazard word "Acid"`},
		{"acid", "flammable", false, ""},
		{"alkali", "flammable", false, ""},
		{"oxidiser", "non-flammable", false, ""},
		{"oxidiser", "not flammable", false, ""},
		{"none known", "none known", false, ""},
		{"oxidiser", "toxic", false, ""},
	} {
		for i, list := range [][]Meeting{Meet(Recognise("thing", test.a), Recognise("liquid", test.b)), Meet(Recognise("liquid", test.b), Recognise("thing", test.a))} {
			require.Equal(t, test.clash, len(list) > 0, "%s, %s, %d", test.a, test.b, i)
			if test.clash {
				assert.Contains(t, fmt.Sprint(list[0].FirstBy, list[0].SecondBy), test.reason)
			}
		}
	}
	assert.NotEmpty(t, Meet(Recognise("a brightener", "oxidiser"), Recognise("ethanol")), "a word and a name")
	assert.NotEmpty(t, Meet(Recognise("sodium sulphide"), Recognise("cleaner", "acid")), "a name and a word")
}

// A name that holds both is one bottle that should not be.
func TestBothInOneName(t *testing.T) {
	for name, clash := range map[string]bool{
		"nital": false, "nitric acid in ethanol": true, "bleach and vinegar": true, "hydrogen peroxide in acetone": true,
		"hypochlorous acid": false, "hypochlorous acid and vinegar": true, "hydrocyanic acid": false, "silver nitrate": false, "ammonium sulphite": false, "chromic acid": false,
		"peracetic acid": false, "acid sulphite": false, "peroxide bleach": false, "zinc acetate": false, "copper nitrate": false, "sulphurous acid": false, "nitrous acid": false,
	} {
		r := Recognise(name)
		assert.Equal(t, clash, len(Meet(r, r)) > 0, name)
	}
}

// Names that must not alarm beside what they are taken for.
func TestFalseFriends(t *testing.T) {
	for _, test := range []struct {
		partner string // what the real thing may not meet
		real    string // which it does not
		friends []string
	}{
		{"bleach", "acid", []string{"acid dye", "Acid Blue 9", "acid red 52", "acid-free paper size", "sodium citrate", "trisodium citrate", "sodium acetate", "potassium sulphate", "water", "deionised water", "sodium chloride", "peroxide-free water", "placid", "amino acids", "sodium dihydrogen phosphate"}},
		{"citric acid", "sulphide", []string{"sodium sulphate", "potassium ferricyanide", "potassium hexacyanoferrate(III)", "ferrocyanide", "potassium thiocyanate", "sodium sulfate", "ammonium alum", "sodium nitrate", "peroxide bleach", "bleach fix", "copper sulphate", "aluminium oxide", "zinc chloride", "propylene carbonate", "dimethyl carbonate", "percarbonate"}},
		{"hydrogen peroxide", "ethanol", []string{"water", "polyvinyl alcohol", "ethanol-free mouthwash", "sodium chloride", "citric acid", "disodium edetate", "non-flammable thinner"}},
		{"ammonia", "iodine", []string{"potassium iodide", "sodium chloride", "chlorine-free water", "bromide"}},
		{"iodine", "ammonia", []string{"ammonium bifluoride", "ammonium chloride", "ammonium hydrogen difluoride"}},
		{"nitric acid", "metal", []string{"zinc oxide", "copper(II) sulphate", "iron(III) chloride", "silver nitrate"}},
		{"sodium hydroxide", "strong acid", []string{"citric acid", "acetic acid", "boric acid", "acid violet 17", "sodium citrate"}},
		{"ethanol", "oxidiser", []string{"acid dye", "potassium nitrate", "sodium nitrite", "iodine", "water"}},
	} {
		for _, name := range test.friends {
			assert.Empty(t, Meet(Recognise(test.partner), Recognise(name)), "%s beside %s is no %s", name, test.partner, test.real)
		}
	}
}
