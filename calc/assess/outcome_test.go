package assess_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/drive"
	"gaugewright/calc/job"
)

// upOf is a set-up event; more are further members.
func upOf(s, more string) string { return `{"s":` + s + `,"is":"set-up"` + more + `}` }

// pressed puts a drive of the hand case into a tree: a part on a day, with lines
// "s MPa peak" and events.
func pressed(t *testing.T, root *document.Node, day, lines string, events ...string) *document.Node {
	t.Helper()
	n, complaints := document.ReadText(`{"d":{"kind":"drive","pile":"p","parts":{"s1":{"from":"` + day + `T08:00:00Z","columns":"s MPa peak=MPa",
		"lines":["` + strings.ReplaceAll(lines, "|", `","`) + `"],"events":[` + strings.Join(events, ",") + `]}}}}`)
	require.True(t, complaints.None(), "%v", complaints.List)
	root.Set("records", n)
	checked := job.Check(root)
	require.True(t, checked.None(), "%v", checked.List)
	return root
}

func outcome(root *document.Node) drive.Outcome {
	j := job.View(root)
	return assess.OutcomesOf(j).Of("p", j.Pressed()["p"])
}

// The hand case: set reading 15.0 MPa, never-exceed reading 17.0 MPa; see
// [handJob].
func TestOutcomeOfTheHandCase(t *testing.T) {
	here := upOf("0", `,"rig":"r","circuit":"c","gauge":"g"`)
	yes, no, unknown := drive.Yes, drive.No, drive.NotKnown
	for what, c := range map[string]struct {
		values, lines string
		events        []string
		want          drive.Outcome
	}{
		"reached":              {"", "60 9.0 9.5|120 15.0 15.5", []string{here}, drive.Outcome{Reached: yes, Passed: no}},
		"a division short":     {"", "60 9.0 9.5|120 14.5 15.5", []string{here}, drive.Outcome{Reached: no, Passed: no}},
		"the peak passed":      {"", "60 9.0 17.5|120 15.0 15.5", []string{here}, drive.Outcome{Reached: yes, Passed: yes}},
		"another unit":         {"", "60 9.0 -|120 15.0 -", []string{here}, drive.Outcome{Reached: yes, Passed: no}},
		"as the pile says":     {"", "60 9.0 9.5|120 15.0 15.5", []string{upOf("0", "")}, drive.Outcome{Reached: yes, Passed: no}},
		"no set-up":            {"", "120 15.0 15.5", nil, drive.Outcome{Reached: yes, Passed: no}},
		"no such circuit":      {"", "120 15.0 15.5", []string{upOf("0", `,"rig":"r","circuit":"x"`)}, drive.Outcome{Reached: unknown, Passed: unknown}},
		"no factor":            {"/criteria/k/factor ", "120 15.0 15.5", []string{here}, drive.Outcome{Reached: unknown, Passed: no}},
		"no limit of the pile": {"/pileTypes/t/pressingLimit ", "120 15.0 15.5", []string{here}, drive.Outcome{Reached: yes, Passed: unknown}},
		"a raking pile":        {"/piles/p/rake 10 %", "120 15.0 15.5", []string{here}, drive.Outcome{Reached: unknown, Passed: unknown}},
		// 1800 kN by efficiency 0.80: (1800 - 30)/(0.80 x 125.66) = 17.61, so 18.0 MPa.
		"a worse circuit": {"/rigs/r/circuits/c/efficiency/low 0.80", "120 17.0 17.0", []string{here}, drive.Outcome{Reached: no, Passed: no}},
		// 150 t and the ballast: 0.9 x 150 x 9.80665 = 1323.9 kN, (1323.9 - 30)/125.66 = 10.3, so 10.0 MPa.
		"less ballast on board": {"/rigs/r/mass 150 t|/rigs/r/ballast 100 t", "120 15.0 15.0", []string{upOf("0", `,"rig":"r","circuit":"c","ballast":"0 t"`)}, drive.Outcome{Reached: yes, Passed: yes}},
		"the rig's ballast":     {"/rigs/r/mass 150 t|/rigs/r/ballast 100 t", "120 15.0 15.0", []string{here}, drive.Outcome{Reached: yes, Passed: no}},
		// Divisions of 2 MPa: 14.83 is 16 rounded up, 17.27 is 16 rounded down.
		"another gauge": {"/gauges/h/fullScale 40 MPa|/gauges/h/division 2 MPa", "120 15.0 15.0", []string{upOf("0", `,"rig":"r","circuit":"c","gauge":"h"`)}, drive.Outcome{Reached: no, Passed: no}},
		"changed on the way": {"/gauges/h/fullScale 40 MPa|/gauges/h/division 2 MPa", "60 16.5 16.5|120 15.0 15.0",
			[]string{here, upOf("100", `,"rig":"r","circuit":"c","gauge":"h"`)}, drive.Outcome{Reached: yes, Passed: no}},
		"passed by the other": {"/gauges/h/fullScale 40 MPa|/gauges/h/division 2 MPa", "60 14.5 16.5|120 15.0 16.5",
			[]string{here, upOf("100", `,"rig":"r","circuit":"c","gauge":"h"`)}, drive.Outcome{Reached: no, Passed: yes}},
	} {
		var values []string
		for _, v := range strings.Split(c.values, "|") {
			if path, value, ok := strings.Cut(v, " "); ok {
				values = append(values, path, value)
			}
		}
		assert.Equal(t, c.want, outcome(pressed(t, with(t, values...), "2026-11-05", c.lines, c.events...)), what)
	}
}

// The certificate that covers the day of the drive counts: made on 2026-05-20,
// it holds for 6 months. By it the set reading is 15.0 and the never-exceed
// reading 18.0 MPa; see [TestHandCaseByCertificate].
func TestOutcomeByTheCertificateOfTheDay(t *testing.T) {
	here := upOf("0", `,"rig":"r","circuit":"c","gauge":"g","certificate":"z"`)
	for day, want := range map[string]drive.Outcome{
		"2026-11-20": {Reached: drive.Yes, Passed: drive.No}, "2026-11-21": {}, "2026-05-19": {},
	} {
		assert.Equal(t, want, outcome(pressed(t, calibrated(t, "circuit"), day, "120 15.0 18.0", here)), day)
	}
}

// Two parts on two days are each judged on their own.
func TestOutcomeOverTwoDays(t *testing.T) {
	root := pressed(t, calibrated(t, "circuit"), "2026-11-20", "120 14.5 18.0", upOf("0", `,"rig":"r","circuit":"c"`))
	parts := root.At("/records/d/parts")
	next, _ := document.ReadText(`{"from":"2026-11-21T08:00:00Z","columns":"s MPa","lines":["0 15.0"]}`)
	parts.Set("s2", next)
	assert.Equal(t, drive.Outcome{}, outcome(root), "the second is not covered: it may have reached the set")
	next.Set("lines", document.NewList())
	assert.Equal(t, drive.Outcome{Reached: drive.No, Passed: drive.No}, outcome(root))
}

// A certificate for two piles covers those of the first two days, and not the
// third.
func TestOutcomeByACertificateForANumberOfPiles(t *testing.T) {
	root := calibrated(t, "circuit", "/certificates/z/validPiles", "2", "/certificates/z/validMonths", "")
	pressed(t, root, "2026-11-05", "120 15.0 15.0", upOf("0", `,"rig":"r","circuit":"c","certificate":"z"`))
	drives := root.Get("records")
	for id, day := range map[string]string{"q": "2026-11-06", "s": "2026-11-09"} {
		root.Get("now").Get("piles").Set(id, root.At("/now/piles/p").Clone())
		d := drives.Get("d").Clone()
		d.Set("pile", document.NewText(id))
		d.At("/parts/s1").Set("from", document.NewText(day+"T08:00:00Z"))
		drives.Set("d"+id, d)
	}
	j := job.View(root)
	judge, all := assess.OutcomesOf(j), j.Pressed()
	for pile, want := range map[string]drive.Answer{"p": drive.Yes, "q": drive.Yes, "s": drive.NotKnown} {
		assert.Equal(t, want, judge.Of(pile, all[pile]).Reached, pile)
	}
}

// What is not read yet is blank, and another job's texts are not looked at.
func TestOutcomeLooksAtNoUnreadText(t *testing.T) {
	root := pressed(t, with(t), "2026-11-05", "120 15.0 15.5")
	was := outcome(root)
	unread := document.NewMap()
	unread.Set("/now/piles/p/rake", document.NewText("1:"))
	root.Set("unread", unread)
	assert.Equal(t, was, outcome(root))
	assert.NotNil(t, root.Get("unread"))
}

// What is left out where outcomes are remembered makes no difference to them.
func TestOutcomesDoNotHangOnWhatIsBeside(t *testing.T) {
	for _, start := range []*document.Node{with(t), with(t, guarded...), calibrated(t, "circuit"),
		with(t, "/piles/p/softDepth", "12 m", "/rigs/r/circuits/c/stroke", "1.6 m", "/pileTypes/t/shape", "square", "/pileTypes/t/width", "300 mm",
			"/pileTypes/t/material", "concrete", "/pileTypes/t/stiffness", "30 GPa", "/criteria/k/layers/l/zone", "settling", "/criteria/k/layers/l/thickness", "5 m",
			"/criteria/k/layers/l/resistance", "20 kPa")} {
		bounds := func() [2]float64 {
			a, _ := judge(start).Pile("p", nil)
			var b [2]float64
			if a.Set != nil {
				b[0] = a.Set.V
			}
			if a.Never != nil {
				b[1] = a.Never.V
			}
			return b
		}
		was := bounds()
		for _, change := range [][2]string{{"mark", "Q"}, {"note", "n"}, {"group", "x"}, {"rank", "3"}, {"east", "5 m"}, {"north", "5 m"}, {"platform", "10 m"}, {"founding", "-20 m"},
			{"cutoff", "9 m"}, {"expectedToe", "-9 m"}, {"leastToe", "-8 m"}, {"stickUp", "1 m"}, {"platform", ""}, {"founding", ""}} {
			patch, ok := job.View(start).Patch("/now/piles/p/"+change[0], document.NewText(change[1]))
			require.True(t, ok)
			document.MergePatch(start.Get("now"), patch)
			assert.Equal(t, was, bounds(), change)
		}
	}
}
