package job_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
)

// The drive of the golden file: in its first part 15.0 MPa with a peak of 15.5
// are the highest, in its second 150 bar with another gauge. A line of 9.0 MPa
// was corrected to 3.0, another struck out.
func TestPressedOfTheGoldenFile(t *testing.T) {
	data, err := os.ReadFile("../../testdata/golden/schema-1.json")
	require.NoError(t, err)
	all := job.View(read(t, string(data))).Pressed()
	require.Len(t, all, 1)
	for _, list := range all {
		require.Len(t, list, 2)
		assert.Equal(t, "2026-11-05", list[0].Day)
		assert.Equal(t, quantity.Mass(60), list[0].Mass().V)
		assert.Equal(t, []quantity.Pressure{15000, 15500}, []quantity.Pressure{list[0].Highest.V, list[0].Peak.V})
		assert.Equal(t, []any{quantity.Pressure(15000), false}, []any{list[1].Highest.V, list[1].Peak.Known})
		assert.NotEqual(t, list[0].Gauge, list[1].Gauge)
	}
}

func pressedBy(t *testing.T, lines, events string) map[string][]job.Stretch {
	return records(t, `"d":{"kind":"drive","pile":"p","parts":{"s1":{"from":"2026-11-05T08:00:00Z","columns":"s MPa peak=bar","lines":[`+lines+`],"events":[`+events+`]}}}`).Pressed()
}

func TestCorrectedLinesCountAsCorrected(t *testing.T) {
	highest := func(events string) (shown, peak quantity.Pressure) {
		list := pressedBy(t, `"60 9.0 95","120 17.0 180","180 15.0 150"`, events)["p"]
		require.Len(t, list, 1)
		return list[0].Highest.V, list[0].Peak.V
	}
	for what, c := range map[string]struct {
		events      string
		shown, peak quantity.Pressure
	}{
		"as written":           {``, 17000, 18000},
		"corrected":            {`{"s":200,"is":"correction","part":"s1","line":"1","says":"120 10.0 100"}`, 15000, 15000},
		"corrected twice":      {`{"s":200,"is":"correction","part":"s1","line":"1","says":"120 10.0 100"},{"s":201,"is":"correction","part":"s1","line":"1","says":"120 16.0 160"}`, 16000, 16000},
		"struck out":           {`{"s":200,"is":"struck out","part":"s1","line":"1"}`, 15000, 15000},
		"struck, not mended":   {`{"s":200,"is":"struck out","part":"s1","line":"1"},{"s":201,"is":"correction","part":"s1","line":"1","says":"120 16.0 160"}`, 15000, 15000},
		"the correction is no": {`{"s":200,"is":"correction","part":"s1","line":"1","says":"120 10.0 100"},{"s":201,"is":"struck out","part":"s1","event":"0"}`, 17000, 18000},
		"of another part":      {`{"s":200,"is":"struck out","part":"s2","line":"1"}`, 17000, 18000},
	} {
		shown, peak := highest(c.events)
		assert.Equal(t, []quantity.Pressure{c.shown, c.peak}, []quantity.Pressure{shown, peak}, what)
	}
}

func TestASetUpHoldsFromItsSecondOn(t *testing.T) {
	list := pressedBy(t, `"60 9.0 -","120 - 150","180 15.0 -"`, `{"s":0,"is":"set-up","rig":"a"},{"s":120,"is":"set-up","rig":"b"},{"s":150,"is":"set-up","rig":"a"},{"s":170,"is":"struck out","part":"s1","event":"1"}`)["p"]
	require.Len(t, list, 1, "the set-up of b is struck out")
	list = pressedBy(t, `"60 9.0 -","120 - 150","180 15.0 -"`, `{"s":150,"is":"set-up","rig":"a"},{"s":0,"is":"set-up","rig":"a"},{"s":120,"is":"set-up","rig":"b"}`)["p"]
	require.Len(t, list, 2)
	assert.Equal(t, []any{"a", quantity.Pressure(15000), false}, []any{list[0].Rig, list[0].Highest.V, list[0].Peak.Known})
	assert.Equal(t, []any{"b", false, quantity.Pressure(15000)}, []any{list[1].Rig, list[1].Highest.Known, list[1].Peak.V})
}

func TestPressedHasAReading(t *testing.T) {
	assert.Empty(t, pressedBy(t, ``, `{"s":0,"is":"set-up","rig":"a"}`), "a drive that has only begun")
	assert.Empty(t, pressedBy(t, `"60 - 95"`, ``), "a peak alone")
	assert.Empty(t, records(t, `"d":{"kind":"drive","pile":"p","struck":{"why":"wrong pile"},"parts":{"s1":{"from":"2026-11-05T08:00:00Z","columns":"s MPa","lines":["0 15.0"]}}},
		"h":{"kind":"hold","pile":"p","parts":{"s1":{"from":"2026-11-05T08:00:00Z","columns":"s MPa","lines":["0 15.0"]}}}`).Pressed())
	two := records(t, `"d":{"kind":"drive","pile":"p","parts":{"s1":{"from":"2026-11-05T08:00:00Z","columns":"s MPa","lines":["0 15.0"],"events":[{"s":0,"is":"set-up","rig":"a"}]},
		"s2":{"from":"2026-11-05T09:00:00Z","columns":"s bar","lines":["0 160"]}}},
		"e":{"kind":"drive","pile":"p","parts":{"s3":{"from":"2026-11-06T08:00:00Z","columns":"s MPa","lines":["0 12.0"]}}}`).Pressed()["p"]
	require.Len(t, two, 2)
	assert.Equal(t, []any{"a", quantity.Pressure(16000)}, []any{two[0].Rig, two[0].Highest.V}, "a part goes on with the set-up of the one before")
	assert.Equal(t, []any{"", "2026-11-06"}, []any{two[1].Rig, two[1].Day}, "another drive does not")
}
