package job_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/job"
)

// Days and moments by the calendar of ISO 8601.
func TestDates(t *testing.T) {
	day, ok := job.FieldAt("/now/certificates/k/on")
	require.True(t, ok)
	require.Equal(t, job.Date, day.Kind)
	for text, good := range map[string]bool{
		"2026-11-03": true, "2024-02-29": true, "2000-02-29": true, "0001-01-01": true,
		"2026-02-29": false, "1900-02-29": false, "2026-04-31": false, "2026-13-01": false, "2026-00-10": false, "2026-01-00": false, "0000-01-01": false,
		"2026-1-3": false, "26-11-03": false, "2026-11-03T": false, "2026/11/03": false, "2026-11-3x": false, " 2026-11-03": false, "20261103": false,
	} {
		problem := day.Problem(text)
		assert.Equal(t, good, problem == nil, text)
		if problem != nil {
			assert.Equal(t, "job.date", problem.Code)
			assert.NotEmpty(t, problem.Example)
		}
	}
	moment := func(text string) bool {
		root := read(t, `{"format":"gaugewright job","schema":1,"minReader":1,"job":"j","now":{},"remarks":{"r":{"says":"x","at":"`+text+`"}}}`)
		return job.Check(root).None()
	}
	for text, good := range map[string]bool{
		"2026-11-03T14:20:00Z": true, "2026-11-03T14:20:00.5Z": true, "2026-11-03T23:59:59.125Z": true, "": true,
		"2026-11-03T24:00:00Z": false, "2026-11-03T14:60:00Z": false, "2026-11-03T14:20:60Z": false, "2026-11-03T14:20:00": false,
		"2026-11-03T14:20:00+01:00": false, "2026-11-03T14:20:00.Z": false, "2026-11-03T14:20:00.1234Z": false, "2026-11-03 14:20:00Z": false,
		"2026-02-30T14:20:00Z": false, "2026-11-03T14:20Z": false, "2026-11-03": false, "2026-11-03T1a:20:00Z": false,
	} {
		assert.Equal(t, good, moment(text), text)
	}
}

// Upper bounds, days and references are what the published schema cannot
// say; the check holds them.
func TestWhatOnlyTheCheckHolds(t *testing.T) {
	for _, c := range []struct{ now, rest, code, path string }{
		{`"rigs":{"r":{"mass":"10001 t"}}`, ``, "job.range", "/now/rigs/r/mass"},
		{`"rigs":{"r":{"circuits":{"c":{"groups":[{"number":"65"}]}}}}`, ``, "job.range", "/now/rigs/r/circuits/c/groups/0/number"},
		{`"gauges":{"g":{"class":"21 %"}}`, ``, "job.range", "/now/gauges/g/class"},
		{`"piles":{"p":{"cutoff":"12000.1 m"}}`, ``, "job.range", "/now/piles/p/cutoff"},
		{`"piles":{"p":{"cutoff":"0.1234567890123456789 m"}}`, ``, "job.quantity", "/now/piles/p/cutoff"},
		{`"certificates":{"k":{"on":"2026-02-30"}}`, ``, "job.date", "/now/certificates/k/on"},
		{`"certificates":{"k":{"gauge":"g"}}`, ``, "job.reference", "/now/certificates/k/gauge"},
		{`"certificates":{"k":{"columns":"MPa kN","points":["1 2 3"]}}`, ``, "job.record", "/now/certificates/k/points/0"},
		{`"piles":{"p":{}}`, `"records":{"d":{"kind":"drive","pile":"q"}}`, "job.reference", "/records/d/pile"},
		{`"piles":{"p":{}}`, `"records":{"d":{"kind":"hold","pile":"p","drive":"x"}}`, "job.reference", "/records/d/drive"},
		{`"piles":{"p":{}}`, `"records":{"d":{"kind":"drive","pile":"p","parts":{"s":{"columns":"s m MPa","lines":["1 2"]}}}}`, "job.record", "/records/d/parts/s/lines/0"},
		{`"piles":{"p":{}}`, `"records":{"d":{"kind":"drive","pile":"p","parts":{"s":{"events":[{"s":0,"is":"set-up","gauge":"g"}]}}}}`, "job.reference", "/records/d/parts/s/events/0/gauge"},
		{``, `"remarks":{"a":{"says":"x","answers":"b"}}`, "job.reference", "/remarks/a/answers"},
	} {
		text := `{"format":"gaugewright job","schema":1,"minReader":1,"job":"j","now":{` + c.now + `}`
		if c.rest != "" {
			text += "," + c.rest
		}
		found := job.Check(read(t, text+"}"))
		require.Len(t, found.List, 1, text)
		assert.Equal(t, c.code, found.List[0].Code, text)
		assert.Equal(t, c.path, found.List[0].Path, text)
	}
}

// Kinds of records, events and names of another version are kept, with
// whatever they hold; a null can stand there outside "now".
func TestOtherVersionsAreKept(t *testing.T) {
	text := `{"format":"gaugewright job","schema":1,"minReader":1,"job":"j","now":{"piles":{"p":{"weather":{"rain":[null]}}}},` +
		`"records":{"n":{"kind":"noise","level":null,"parts":[1]},"d":{"kind":"drive","pile":"p","crew":3,"parts":{"s":{"tide":1.5,"events":[{"s":0,"is":"flood","depth":2}]}}}},` +
		`"weather":null,"sittings":{"s":{"seen":{},"entries":[],"battery":"low"}}}`
	assert.Empty(t, job.Check(read(t, text)).List)
}

// A place for a list takes no text but the blank one, which a person leaves
// there.
func TestListsTakeNoText(t *testing.T) {
	points, ok := job.FieldAt("/now/certificates/k/points")
	require.True(t, ok)
	require.Equal(t, job.Lines, points.Kind)
	require.NotNil(t, points.Problem("5.0 627"))
	assert.Nil(t, points.Problem(""))
	assert.Empty(t, job.Check(read(t, `{"format":"gaugewright job","schema":1,"minReader":1,"job":"j","now":{"certificates":{"k":{"points":""}}}}`)).List)
}

func TestCertificateOfAnotherRig(t *testing.T) {
	root := read(t, `{"format":"gaugewright job","schema":1,"minReader":1,"job":"j","now":{"rigs":{"r":{"circuits":{"c":{}}},"s":{}},
		"certificates":{"k":{"number":"KL-1","rig":"s","circuit":"c"},"l":{"rig":"r","circuit":"c"}}}}`)
	assert.Empty(t, job.Check(root).List)
	found := job.Problems(root)
	require.Len(t, found.List, 1)
	assert.Equal(t, "job.certificateCircuit", found.List[0].Code)
	assert.Equal(t, "/now/certificates/k/circuit", found.List[0].Path)
}
