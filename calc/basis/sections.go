package basis

import (
	"strings"

	"gaugewright/calc/quantity"
)

// Section is one section of a published table. Its measures are figures of
// their own, "section.<name>.<measure>", with the table as their source.
type Section struct {
	Name, Shape string
	measures    []string // in the order of sectionMeasures[Shape], [mm]; area [cm2] and gyration [mm] behind them
}

// sectionMeasures are what a table of such sections states.
var sectionMeasures = map[string][]string{
	"spun": {"width", "wall"},
	"tube": {"width", "wall"},
	"H":    {"depth", "width", "web", "flange", "area", "gyration"},
}

// sectionTables name the sources. Area and moment of a ring are computed.
var sectionTables = map[string]Entry{
	"spun": {Document: "makers' lists of prestressed spun concrete piles", Edition: "several", Clause: "outer diameter and wall; area and mass agree with the ring", Mark: Seen},
	"tube": {Document: "EN 10210-2 and EN 10219-2", Edition: "recalled", Clause: "tables of sizes: outer diameter and wall", Mark: Memory},
	"H":    {Document: "Euronorm 53-62 and BS 4-1", Edition: "recalled", Clause: "tables of sizes and properties: measures, area, least radius of gyration", Mark: Memory},
}

var sections = []Section{
	ring("spun", "300", "60"), ring("spun", "350", "65"), ring("spun", "400", "75"),
	ring("tube", "168.3", "10"), ring("tube", "219.1", "8"), ring("tube", "219.1", "10"), ring("tube", "273", "10"),
	ring("tube", "323.9", "10"), ring("tube", "323.9", "12.5"), ring("tube", "406.4", "12.5"), ring("tube", "406.4", "16"),
	ring("tube", "508", "12.5"), ring("tube", "508", "16"), ring("tube", "610", "12.5"), ring("tube", "711", "12.5"),
	ring("tube", "762", "16"), ring("tube", "914", "16"), ring("tube", "1016", "16"),
	rolled("190", "200", "6.5", "10", "53.83", "49.8"), rolled("200", "200", "9", "15", "78.08", "50.7"),
	rolled("240", "240", "10", "17", "106.0", "60.8"), rolled("290", "300", "8.5", "14", "112.5", "74.9"),
	rolled("300", "300", "11", "19", "149.1", "75.8"), rolled("400", "300", "13.5", "24", "197.8", "74.0"),
	rolled("299.3", "306.4", "11.0", "11.1", "100", "72.8"), rolled("307.9", "310.7", "15.3", "15.4", "140", "74.2"),
	rolled("318.5", "316.0", "20.6", "20.7", "190", "75.8"),
}

func ring(shape, width, wall string) Section {
	return Section{shape + " " + width + " x " + wall, shape, []string{width, wall}}
}

func rolled(depth, width, web, flange, area, gyration string) Section {
	return Section{"H " + depth + " x " + width + " x " + web + " x " + flange, "H", []string{depth, width, web, flange, area, gyration}}
}

// Sections returns the tabled sections.
func Sections() []Section { return append([]Section(nil), sections...) }

// FindSection returns the tabled section of this name.
func FindSection(name string) (Section, bool) {
	for _, s := range sections {
		if s.Name == name {
			return s, true
		}
	}
	return Section{}, false
}

// Figure returns the id of the figure of a measure, "" where the table of such
// sections has none: "section.tube 508 x 12.5.wall".
func (s Section) Figure(measure string) string {
	for _, m := range sectionMeasures[s.Shape] {
		if m == measure {
			return sectionPrefix + s.Name + "." + measure
		}
	}
	return ""
}

const sectionPrefix = "section."

// sectionEntry finds a figure of a tabled section.
func sectionEntry(id string) (Entry, bool) {
	rest, ok := strings.CutPrefix(id, sectionPrefix)
	at := strings.LastIndexByte(rest, '.')
	if !ok || at < 0 {
		return Entry{}, false
	}
	s, ok := FindSection(rest[:at])
	if !ok {
		return Entry{}, false
	}
	for i, m := range sectionMeasures[s.Shape] {
		if m == rest[at+1:] {
			e := sectionTables[s.Shape]
			e.ID, e.Value, e.Dim = id, s.measures[i]+" mm", quantity.Lengths
			if m == "area" {
				e.Value, e.Dim = s.measures[i]+" cm2", quantity.Areas
			}
			return e, true
		}
	}
	return Entry{}, false
}
