package job

import (
	"slices"
	"sort"
	"strconv"
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/drive"
	"gaugewright/calc/quantity"
)

// SetUp is what a pile was pressed with from some moment on, as the record
// states it. What it leaves blank is as the pile, and for the gauge the circuit,
// states it.
type SetUp struct {
	Rig, Circuit, Gauge string
	Ballast             string // a mass as stated
	Day                 string // of the part, YYYY-MM-DD
}

// Mass returns the ballast on board.
func (s SetUp) Mass() Given[quantity.Mass] {
	return given[quantity.Mass](document.NewText(s.Ballast), "", "ballast", quantity.Masses)
}

// Stretch is what was read under one set-up: of the readings, and of the peaks
// between them, the highest.
type Stretch struct {
	SetUp
	Highest, Peak drive.Pressure
}

// Pressed lists, by the id of the pile, what was read while piles were pressed:
// the drive records with at least one reading that are not struck out. Struck and
// corrected lines and events count as they were corrected. The set-up in force is
// the last one stated at or before the line in its part, else that of the part
// before.
func (j Job) Pressed() map[string][]Stretch {
	all := map[string][]Stretch{}
	columns := map[declaration][]Column{}
	for _, n := range j.Root.Get("records").Members() {
		if n.Get("kind").Text() != "drive" || struckOut(n) {
			continue
		}
		// Without a place: what is read here opens nowhere, and there may be thousands.
		r := Record{Kind: "drive", node: n, columns: columns}
		pile := r.Text("pile")
		for _, s := range r.stretches() {
			all[pile] = joined(all[pile], s)
		}
	}
	for pile, list := range all {
		read := false
		for _, s := range list {
			read = read || s.Highest.Known
		}
		if !read {
			delete(all, pile)
		}
	}
	return all
}

// joined adds a stretch, to the one of the same set-up where there is one.
func joined(list []Stretch, s Stretch) []Stretch {
	for i := range list {
		if list[i].SetUp == s.SetUp {
			list[i].Highest, list[i].Peak = higher(list[i].Highest, s.Highest), higher(list[i].Peak, s.Peak)
			return list
		}
	}
	return append(list, s)
}

func higher(a, b drive.Pressure) drive.Pressure {
	if !a.Known || b.Known && b.V > a.V {
		return b
	}
	return a
}

// stretches parts the lines of a record by the set-up in force.
func (r Record) stretches() (list []Stretch) {
	var before SetUp
	parts := r.Parts()
	mended := mend(parts)
	for _, p := range parts {
		ups := p.setUps(mended)
		tops := make([]tops, len(ups)+1)
		reading, peak, at := p.column("reading"), p.column("peak"), 0
		for i := range p.Len() {
			line := p.Line(i)
			if len(mended) > 0 {
				line = mended.line(line)
			}
			k := len(ups)
			if k > 0 && ups[k-1].s > 0 { // else the last of them holds from the beginning
				if s, ok := line.At(); ok {
					at = s
				}
				for k > 0 && ups[k-1].s > at {
					k--
				}
			}
			tops[k].reading.look(line, reading)
			tops[k].peak.look(line, peak)
		}
		day := Day(p.From)
		for k, top := range tops {
			in := before
			if k > 0 {
				in = ups[k-1].SetUp
			}
			if in.Day = day; top.reading.any || top.peak.any {
				list = append(list, Stretch{in, top.reading.pressure("reading"), top.peak.pressure("peak")})
			}
		}
		if len(ups) > 0 {
			before = ups[len(ups)-1].SetUp
		}
	}
	return list
}

// column is the place of a column, -1 where it was not declared.
func (p Part) column(name string) int {
	return slices.IndexFunc(p.Columns, func(c Column) bool { return c.Name == name })
}

// tops are the lines with the highest reading and the highest peak. They are
// found by their digits: only the two are read as quantities.
type tops struct{ reading, peak top }

type top struct {
	line Line
	v    float64
	any  bool
}

// pressure reads the line.
func (t *top) pressure(column string) drive.Pressure {
	g := Measured[quantity.Pressure](t.line, column)
	return drive.Pressure{V: g.V, Known: g.Known()}
}

func (t *top) look(l Line, column int) {
	if column < 0 {
		return
	}
	word := l.Text
	for ; column > 0; column-- {
		_, word, _ = strings.Cut(word, " ")
	}
	word, _, _ = strings.Cut(word, " ")
	if v, err := strconv.ParseFloat(word, 64); err == nil && (!t.any || v > t.v) {
		t.line, t.v, t.any = l, v, true
	}
}

// setUpAt is a set-up with the second from which it holds.
type setUpAt struct {
	SetUp
	s int
}

// setUps lists the set-ups of a part by their time.
func (p Part) setUps(mended mended) (list []setUpAt) {
	for i, e := range p.Events() {
		if _, struck := mended[place{p.ID, "event", i}]; e.Is == "set-up" && !struck {
			list = append(list, setUpAt{SetUp{Rig: e.Text("rig"), Circuit: e.Text("circuit"), Gauge: e.Text("gauge"), Ballast: e.Text("ballast")}, e.S})
		}
	}
	sort.SliceStable(list, func(a, b int) bool { return list[a].s < list[b].s })
	return list
}

// mended says what lines were corrected to, and which lines and events were
// struck out; their text is then blank.
type mended map[place]string

// place is a line or an event of a part, counted from 0.
type place struct {
	part, what string
	number     int
}

// mend gathers the corrections of a record, in the order of its parts. One that is
// struck out does not count.
func mend(parts []Part) mended {
	m := mended{}
	if !slices.ContainsFunc(parts, Part.corrects) {
		return m
	}
	for _, is := range []string{"struck out", "correction"} {
		for _, p := range parts {
			for i, e := range p.Events() {
				if _, struck := m[place{p.ID, "event", i}]; struck || e.Is != is {
					continue
				}
				for _, what := range []string{"line", "event"} {
					if n, ok := count(e.node.Get(what)); ok {
						at := place{e.Text("part"), what, n}
						if says, done := m[at]; is == "struck out" || !done || says != "" {
							m[at] = strings.TrimSpace(e.Text("says"))
						}
					}
				}
			}
		}
	}
	return m
}

// corrects says whether anything is corrected or struck out in a part.
func (p Part) corrects() bool {
	for _, n := range p.events.Items() {
		if is := n.Get("is").Text(); is == "struck out" || is == "correction" {
			return true
		}
	}
	return false
}

// line returns a line as it was corrected; a struck one holds nothing.
func (m mended) line(l Line) Line {
	says, changed := m[place{l.part.ID, "line", l.index}]
	if changed {
		l.Text = says
	}
	return l
}
