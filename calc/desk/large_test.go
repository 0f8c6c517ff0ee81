package desk_test

import (
	"fmt"
	"math/rand"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"gaugewright/calc/desk"
	"gaugewright/calc/document"
	"gaugewright/calc/history"
)

// largeJob makes a job of many piles with a drive record each and many edits by
// many hands. It is made up anew from the same numbers each time and proves
// nothing but speed and size.
func largeJob(piles, readings, edits int) *document.Node {
	rnd := rand.New(rand.NewSource(7))
	id := func(kind, n int) string { return fmt.Sprintf("0193b0%02d-0000-7000-8000-%012d", kind, n) }
	node := func(format string, args ...any) *document.Node {
		n, complaints := document.ReadText(fmt.Sprintf(format, args...))
		if !complaints.None() {
			panic(complaints.List[0])
		}
		return n
	}
	root := node(`{"format":"gaugewright job","schema":1,"minReader":1,"job":"%s","now":{}}`, jobID)
	start := node(`{"title":"Large job","datum":"site","decimalSign":".","rigs":{},"gauges":{},"stock":{},"pileTypes":{},"criteria":{},"piles":{}}`)
	for r := range 4 {
		start.Get("rigs").Set(id(1, r), node(`{"name":"Rig %d","mass":"%d t","ballast":"40 t","gripHeight":"0.60 m","circuits":{"%s":{"name":"main",
			"groups":[{"number":"4","bore":"200 mm","rod":"140 mm","side":"bore"}],"stroke":"1.60 m","maxPressure":"25 MPa","onHead":"30 kN","onHeadInMass":"yes",
			"efficiency":{"low":"0.95","high":"1.00","basis":"estimate"},"gauge":"%s"}}}`, r+1, 180+10*r, id(2, r), id(3, r)))
		start.Get("gauges").Set(id(3, r), node(`{"serial":"PG-%02d","fullScale":"40 MPa","division":"0.5 MPa","class":"1.6 %%"}`, r))
	}
	for i, l := range []string{"12.0", "10.0", "8.0", "6.0", "4.0", "3.0"} {
		start.Get("stock").Set(id(4, i), node(`{"name":"S%d","length":"%s m"}`, i, l))
	}
	start.Get("pileTypes").Set(id(5, 0), node(`{"name":"SQ 300","shape":"square","width":"300 mm","pressingLimit":"2150 kN","bars":"0.60 m","lap":"0.70 m"}`))
	start.Get("criteria").Set(id(6, 0), node(`{"name":"Columns","scheme":"single factor","factor":"2.0","hold":{"time":"30 s"}}`))
	for p := range piles {
		start.Get("piles").Set(id(7, p), node(`{"mark":"P%d","type":"%s","rig":"%s","circuit":"%s","criterion":"%s","workingLoad":"%d kN","platform":"12.60 m","founding":"-%d.%d0 m","cutoff":"11.20 m"}`,
			p+1, id(5, 0), id(1, p%4), id(2, p%4), id(6, 0), 600+rnd.Intn(300), 4+rnd.Intn(20), rnd.Intn(10)))
	}
	history.Enter(root, history.Sitting{ID: id(8, 0), Who: "office", Device: "desk", On: "2026-11-02T07:00:00Z"}, history.Change{At: "2026-11-02T07:00:00Z", Patch: start})
	hands := []string{"Ada", "Ben", "Cleo", "Dan"}
	for e := range edits {
		s := history.Sitting{ID: id(8, 1+e/100), Who: hands[e/100%4], Device: "phone " + strconv.Itoa(e/100%7), On: "2026-11-03T07:00:00Z"}
		field := []string{`"workingLoad":"%d kN"`, `"cutoff":"11.%d m"`, `"founding":"-%d.50 m"`}[rnd.Intn(3)]
		value := map[byte]int{'w': 600 + rnd.Intn(300), 'c': 10 + rnd.Intn(60), 'f': 4 + rnd.Intn(20)}[field[1]]
		history.Enter(root, s, history.Change{At: fmt.Sprintf("2026-11-%02dT%02d:%02d:00Z", 3+e/2000, 7+e/200%10, e%60),
			Patch: node(`{"piles":{"%s":{`+field+`}}}`, id(7, rnd.Intn(piles)), value)})
	}
	records := document.NewMap()
	for p := range piles {
		drive := node(`{"kind":"drive","pile":"%s","parts":{"%s":{"from":"2026-11-05T08:00:00Z","columns":"s m MPa","lines":[],"events":[{"s":0,"is":"set-up","rig":"%s","circuit":"%s","gauge":"%s","ballast":"40 t"},{"s":20,"is":"segment","mark":"S-%d"}]}}}`,
			id(7, p), id(8, 0), id(1, p%4), id(2, p%4), id(3, p%4), p)
		lines := drive.At("/parts/" + id(8, 0) + "/lines")
		for i := range readings {
			lines.Append(document.NewText(fmt.Sprintf("%d %.2f %.1f", 75+60*i, 0.3*float64(i), 2+0.2*float64(i))))
		}
		records.Set(id(9, p), drive)
	}
	root.Set("records", records)
	return root
}

// The large job of the budgets: 5,000 piles, 60 readings each, 20,000 edits.
func budgetJob() []byte { return largeJob(5000, 60, 20000).Stable() }

func TestTheLargeJobOpens(t *testing.T) {
	data := largeJob(200, 60, 800).Stable()
	x := opened(t, string(data))
	require.Equal(t, string(data), x.save())
	rows := x.show("piles", `,"from":0,"count":60`).Get("rows")
	require.Equal(t, 60, rows.Len())
	// GAUGEWRIGHT_LARGE names a file into which the large job of the budgets is
	// written, for measuring in a browser.
	if path := os.Getenv("GAUGEWRIGHT_LARGE"); path != "" {
		require.NoError(t, os.WriteFile(path, budgetJob(), 0o644))
	}
}

const (
	askOpen  = `{"verb":"open","doc":"` + jobID + `","as":"file"}`
	askPiles = `{"verb":"show","doc":"` + jobID + `","view":"piles","from":0,"count":60}`
)

func enterLarge(path, typed string) string {
	return `{"verb":"enter","doc":"` + jobID + `","sitting":{"id":"bench"},"at":"2026-12-01T07:00:00Z","do":"type","path":"` + path + `","typed":"` + typed +
		`","show":{"view":"piles","from":0,"count":60}}`
}

func benchmarkOpened(b *testing.B) *desk.Desk {
	d := desk.New()
	if answer, _ := d.Call(askOpen, budgetJob()); answer[:10] != `{"ok":true` {
		b.Fatal(answer)
	}
	d.Call(askPiles, nil)
	return d
}

// Open: read, check, hold "now" against the fold of all entries, look for open
// choices, show the first rows.
func BenchmarkLargeOpen(b *testing.B) {
	data := budgetJob()
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		d := desk.New()
		d.Call(askOpen, append([]byte(nil), data...))
		d.Call(askPiles, nil)
	}
}

func BenchmarkLargeEditOnePile(b *testing.B) {
	d := benchmarkOpened(b)
	n := 0
	b.ReportAllocs()
	for b.Loop() {
		n++
		d.Call(enterLarge("/now/piles/0193b007-0000-7000-8000-000000000003/workingLoad", strconv.Itoa(700+n%2)), nil)
	}
}

func BenchmarkLargeEditOneRig(b *testing.B) {
	d := benchmarkOpened(b)
	n := 0
	b.ReportAllocs()
	for b.Loop() {
		n++
		d.Call(enterLarge("/now/rigs/0193b001-0000-7000-8000-000000000001/mass", strconv.Itoa(180+n%2)), nil)
	}
}

// An edit of what all pressed piles name, whose outcomes are judged with it: the
// factor keeps the set reading within its division. The first such edit reads the
// drives, and judges them without it as well.
func BenchmarkLargeEditOneCriterion(b *testing.B) {
	d := benchmarkOpened(b)
	n := 0
	b.ReportAllocs()
	for b.Loop() {
		n++
		d.Call(enterLarge("/now/criteria/0193b006-0000-7000-8000-000000000000/drag", strconv.Itoa(n%2)), nil)
	}
}

func BenchmarkLargeFirstEdit(b *testing.B) {
	data := budgetJob()
	for b.Loop() {
		b.StopTimer()
		d := desk.New()
		d.Call(askOpen, append([]byte(nil), data...))
		d.Call(askPiles, nil)
		b.StartTimer()
		d.Call(enterLarge("/now/criteria/0193b006-0000-7000-8000-000000000000/drag", "0"), nil)
	}
}

func BenchmarkLargeAssessAll(b *testing.B) {
	data := budgetJob()
	b.ReportAllocs()
	for b.Loop() {
		desk.Assess(append([]byte(nil), data...), "")
	}
}

func BenchmarkLargeSave(b *testing.B) {
	d := benchmarkOpened(b)
	b.ReportAllocs()
	for b.Loop() {
		d.Call(`{"verb":"save","doc":"`+jobID+`"}`, nil)
	}
}
