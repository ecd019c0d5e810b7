package bench

import (
	"os"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/quantity"
	"minim/uncertainty/record"
)

// The forms of a time (RFC 3339, and the same with a space and without seconds), and what
// is none.
func TestParseTime(t *testing.T) {
	for _, text := range []string{
		"2026-11-28T10:05:00+01:00", "2026-11-28 10:05:00+01:00", "2026-11-28 10:05+01:00", "2026-11-28 10:05 +01:00", "2026-11-28T09:05Z", "2026-11-28 09:05 Z",
		"2026-11-27 23:05 -10:00",
	} {
		m, err := parseTime(text)
		require.NoError(t, err, text)
		assert.True(t, m.zoned)
		assert.True(t, m.first.Equal(time.Date(2026, 11, 28, 9, 5, 0, 0, time.UTC)) && m.last.Equal(m.first), text)
	}
	for _, text := range []string{"2026-11-28 10:05", "2026-11-28T10:05", "2026-11-28 10:05:00"} {
		m, err := parseTime(text)
		require.NoError(t, err, text)
		assert.Equal(t, moment{time.Date(2026, 11, 28, 10, 5, 0, 0, time.UTC), time.Date(2026, 11, 28, 10, 5, 0, 0, time.UTC), false}, m)
	}
	for _, text := range []string{"", "10:05", "2026-11-31 10:05", "2026-11-28+01:00", "2026-11-28 10:05 CET", "2026-11-28 10:05 +1", "2026-11-28 25:05", "28.11.2026", "2026-11-28 10:05 +01:00 "} {
		_, err := parseTime(text)
		assert.Error(t, err, text)
	}
}

// Which of two times surely is before the other: the hour in autumn that comes twice, a
// journey to the west and one over the date line, clocks without a zone, days (constructed).
func TestBefore(t *testing.T) {
	for _, c := range []struct {
		above, below string
		backwards    bool
	}{
		{"2026-11-28 10:05", "2026-11-28 10:05", false},
		{"2026-11-28 10:05", "2026-11-28 10:04", true},
		{"2026-10-25 02:50 +02:00", "2026-10-25 02:10 +01:00", false}, // 20 min later
		{"2026-10-25 02:50 +02:00", "2026-10-25 02:10 +02:00", true},
		{"2026-10-25 02:50", "2026-10-25 02:10", true}, // told, since nothing says that the clock was set
		{"2026-11-28 12:00 +01:00", "2026-11-28 08:30 -05:00", false},
		{"2026-11-28 12:00 +01:00", "2026-11-28 05:30 -05:00", true},
		{"2026-11-28 10:00 +13:00", "2026-11-27 15:00 -10:00", false}, // Tonga to Hawaii
		{"2026-11-28 10:05 +01:00", "2026-11-28 08:00", false},        // it may be so anywhere in the west
		{"2026-11-28 10:05 +01:00", "2026-11-27 21:04", true},         // 09:05 of that day at the latest, in UTC-12
		{"2026-11-28 10:05 +01:00", "2026-11-27 21:06", false},
		{"2026-11-28 10:05", "2026-11-27 20:06 Z", false}, // 10:05 in UTC+14 is 20:05 the day before
		{"2026-11-28 10:05", "2026-11-27 20:04 Z", true},
		{"2026-11-28", "2026-11-28 00:00", false},
		{"2026-11-28", "2026-11-27 23:59", true},
		{"2026-11-28 23:59", "2026-11-28", false},
		{"2026-11-28 00:00", "2026-11-27", true},
		{"2026-11-28 11:59 Z", "2026-11-27", false}, // noon of the 28th is midnight in UTC-12
		{"2026-11-28 12:00 Z", "2026-11-27", true},
	} {
		above, err := parseTime(c.above)
		require.NoError(t, err)
		below, err := parseTime(c.below)
		require.NoError(t, err)
		assert.Equal(t, c.backwards, below.before(above), "%s, %s", c.above, c.below)
	}
}

// Entries whose times run backwards are told, each against the nearest above; what is
// struck is not.
func TestTimesThatRunBackwards(t *testing.T) {
	for entries, want := range map[string][]record.Backward{
		`1 = { step = 1, at = "2026-11-28 10:05" } | 2 = { step = 2, at = "2026-11-28 10:04" }`:                                                                                   {{Entry: 2, Above: 1}},
		`1 = { step = 1, at = "2026-11-28" } | 2 = { step = 2, at = "2026-11-27 10:05" }`:                                                                                         {{Entry: 2, Above: 1}},
		`1 = { step = 1, at = "2026-11-28 10:05" } | 2 = { step = 2, at = "2026-11-28" } | 3 = { step = 3 } | 4 = { step = 4, at = "2026-11-28 10:04" }`:                          {{Entry: 4, Above: 1}},
		`1 = { step = 1, at = "2062-11-28 10:05" } | 2 = { step = 2, at = "2026-11-28 10:06" } | 3 = { step = 3, at = "2026-11-28 10:07" }`:                                       {{Entry: 2, Above: 1}},
		`1 = { step = 1, at = "2062-11-28 10:05" } | 2 = { corrects = 1, by = "AK", at = "2026-11-28 10:06" } | 3 = { step = 2, at = "2026-11-28 10:07" }`:                        nil,
		`1 = { temperature = "21 °C", at = "2062-11-28 10:05" } | 2 = { corrects = 1, withdrawn = true, by = "AK", at = "2026-11-28" } | 3 = { step = 1, at = "2026-11-28" }`:     nil,
		`1 = { step = 1, at = "2026-10-25 02:50 +02:00" } | 2 = { step = 2, at = "2026-10-25 02:10 +01:00" } | 3 = { step = 3, at = "2026-10-24 20:30 -05:00" } | 4 = {step = 4}`: nil,
	} {
		assert.Equal(t, want, parseRecord(t, demoPrep(t), twoDilutions(entries)).Backward, entries)
	}
}

// A time more than a day ahead of the clock is refused, wherever the clocks stand.
func TestEntryTime(t *testing.T) {
	berlin := time.Date(2026, 10, 25, 2, 30, 0, 0, time.FixedZone("CET", 3600)) // 01:30 UTC
	auckland := berlin.In(time.FixedZone("NZDT", 13*3600))                      // 14:30
	for _, c := range []struct {
		text string
		now  time.Time
		ok   bool
	}{
		{"2026-10-25 02:30", berlin, true}, {"2026-10-25 03:30", berlin, true}, {"2026-10-26 02:30", berlin, true}, {"2026-10-26 02:31", berlin, false},
		{"2026-10-26 01:30 Z", berlin, true}, {"2026-10-26 01:31 Z", berlin, false}, {"2026-10-26", berlin, true}, {"2026-10-27", berlin, false},
		{"2026-10-26 14:30", auckland, true}, {"2026-10-26 14:31", auckland, false}, {"2026-10-26 02:31 +01:00", auckland, false},
		{"2062-10-25 02:30", berlin, false}, {"1999-01-01", berlin, true}, {"2026-10-25 02:61", berlin, false}, {"9999-12-31", auckland, false},
	} {
		at, err := EntryTime(c.text, c.now)
		assert.Equal(t, c.ok, err == nil, c.text)
		if wrong := (*quantity.Error)(nil); c.ok {
			assert.Equal(t, c.text, at)
		} else if assert.ErrorAs(t, err, &wrong) {
			assert.NotEmpty(t, wrong.Hint, c.text)
		}
	}
	at, err := EntryTime("", berlin)
	assert.NoError(t, err)
	assert.Equal(t, "2026-10-25 02:30 +01:00", at)
	_, err = EntryTime("2062-10-25 02:30", berlin)
	assert.EqualError(t, err, `"2062-10-25 02:30" is more than a day ahead: it is 2026-10-25 02:30 +01:00`)
}

// Whatever times stand in a record, a correction and a withdrawal can follow.
func TestCorrectionCanAlwaysFollow(t *testing.T) {
	p := demoPrep(t)
	path := recordFile(t, twoDilutions(`1 = { step = 1, by = "AK", at = "2062-11-28 10:05" } | 2 = { temperature = "21 °C", by = "AK", at = "2062-11-28" }`))
	for _, line := range []string{"entry 1: weighed 1.01 g", "entry 2: withdrawn", "step 2: done"} {
		require.NoError(t, Add(t.Context(), path, p, Addition{By: "AK", At: "2026-11-28 10:06 +01:00", Lines: []string{line}}), line)
	}
	r, err := LoadRecord(t.Context(), path, p)
	require.NoError(t, err)
	assert.Empty(t, r.Backward)
	assert.Equal(t, 1.01, r.Made.Steps[0].Amount)
	assert.Equal(t, "2026-11-28 10:06 +01:00", r.Entries[4].At)
	_, err = os.Stat(path)
	require.NoError(t, err)
}
