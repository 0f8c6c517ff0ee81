package job_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
)

func records(t *testing.T, text string) job.Job {
	return job.View(read(t, `{"job":"j","now":{},"records":{`+text+`}}`))
}

const oneDrive = `"d":{"kind":"drive","pile":"p","parts":{
	"s2":{"from":"2026-11-05T10:00:00Z","columns":"s bar toe=ft","lines":["0 150 58.0"]},
	"s1.2":{"from":"2026-11-05T09:00:00Z"},
	"s1":{"from":"2026-11-05T08:00:00Z","columns":"s m MPa peak=MPa still=yn","lines":["75 0.50 2.0 2.5 n","90 - 15.0 - y","105 1.10 - 3.0 -"],
		"events":[{"s":0,"is":"set-up","rig":"r","ballast":"40 t"},{"s":80,"is":"stop","why":"meal"}]}}}`

func TestLinesOfADrive(t *testing.T) {
	d := records(t, oneDrive).RecordsOf("drive", "p")
	require.Len(t, d, 1)
	assert.Equal(t, "/records/d", d[0].Path)
	parts := d[0].Parts()
	require.Len(t, parts, 3)
	assert.Equal(t, []string{"s1", "s1.2", "s2"}, []string{parts[0].ID, parts[1].ID, parts[2].ID}, "in order of time")
	assert.Equal(t, "s1", parts[1].Sitting)
	assert.Zero(t, parts[1].Len())

	p := parts[0]
	require.Equal(t, 3, p.Len())
	first, second, third := p.Line(0), p.Line(1), p.Line(2)
	at, ok := first.At()
	assert.True(t, ok)
	assert.Equal(t, 75, at)
	toe := job.Measured[quantity.Length](first, "toe")
	require.True(t, toe.Known())
	assert.Equal(t, quantity.Length(0.5), toe.V)
	assert.Equal(t, "0.50", toe.Stated.Digits)
	assert.Equal(t, "/records/d/parts/s1/lines/0", toe.Path())
	assert.Equal(t, first.Path(), toe.Path())
	assert.Equal(t, quantity.Pressure(2000), job.Measured[quantity.Pressure](first, "reading").V)
	assert.Equal(t, quantity.Pressure(2500), job.Measured[quantity.Pressure](first, "peak").V)
	still, ok := first.Flag("still")
	assert.True(t, ok)
	assert.False(t, still)

	// Not read is blank, and not zero.
	assert.Equal(t, job.Blank, job.Measured[quantity.Length](second, "toe").State)
	assert.Equal(t, job.Blank, job.Measured[quantity.Pressure](third, "reading").State)
	assert.Equal(t, job.Blank, job.Measured[quantity.Length](first, "head").State, "not declared")
	assert.Equal(t, job.Blank, job.Measured[quantity.Length](first, "still").State, "no number")
	still, ok = second.Flag("still")
	assert.True(t, ok && still)
	_, ok = third.Flag("still")
	assert.False(t, ok)

	// Columns in another order and other units.
	other := parts[2].Line(0)
	assert.Equal(t, quantity.Pressure(15000), job.Measured[quantity.Pressure](other, "reading").V)
	assert.InDelta(t, 58*0.3048, float64(job.Measured[quantity.Length](other, "toe").V), 1e-12)
}

func TestEventsOfADrive(t *testing.T) {
	events := records(t, oneDrive).Records("drive")[0].Parts()[0].Events()
	require.Len(t, events, 2)
	assert.Equal(t, "set-up", events[0].Is)
	assert.Equal(t, "r", events[0].Text("rig"))
	ballast := job.Stated[quantity.Mass](events[0], "ballast", quantity.Masses)
	assert.Equal(t, quantity.Mass(40), ballast.V)
	assert.Equal(t, "/records/d/parts/s1/events/0/ballast", ballast.Path())
	assert.Equal(t, job.Blank, job.Stated[quantity.Mass](events[1], "ballast", quantity.Masses).State)
	assert.Equal(t, 80, events[1].S)
	assert.Equal(t, "meal", events[1].Text("why"))
}

func TestStruckRecordsAreLeftOut(t *testing.T) {
	j := records(t, `"b":{"kind":"hold","pile":"p"},"a":{"kind":"hold","pile":"q","struck":{"why":""}},"c":{"kind":"hold","pile":"p","struck":{"why":"wrong pile"}},
		"l":{"kind":"level","of":"head","pile":"p","struck":{"why":"wrong pile"},"parts":{"s":{"columns":"s m","lines":["0 1.00"]}}}`)
	list := j.Records("hold")
	require.Len(t, list, 2)
	assert.Equal(t, []string{"a", "b"}, []string{list[0].ID, list[1].ID}, "a blank reason strikes nothing out")
	assert.Empty(t, j.HeadLevels())
}

func TestHeadLevelsInOtherUnits(t *testing.T) {
	j := records(t, `"l":{"kind":"level","of":"head","pile":"p","parts":{"s":{"columns":"s ft","lines":["0 40.0","60 38.5","90 -"]}}}`)
	level := j.HeadLevels()["p"].Level
	assert.InDelta(t, 38.5*0.3048, float64(level.V), 1e-12, "the last that was read")
	assert.Equal(t, "/records/l/parts/s/lines/1", level.Path())
}
