package basis_test

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
)

// table reads a file of testdata: rows by the names of its columns.
func table(t *testing.T, name string) []map[string]string {
	t.Helper()
	data, err := os.ReadFile("../../testdata/" + name)
	require.NoError(t, err)
	var columns []string
	var rows []map[string]string
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n") {
		if strings.HasPrefix(line, "#") {
			continue
		}
		cells := strings.Split(line, ",")
		if columns == nil {
			columns = cells
			continue
		}
		row := map[string]string{}
		for i, c := range columns {
			row[c] = cells[i]
		}
		rows = append(rows, row)
	}
	require.NotEmpty(t, rows)
	return rows
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return v
}

// Every row of the tables in testdata is offered with the measures printed
// there, and no other section is.
func TestSectionsAreThoseOfTheTables(t *testing.T) {
	named := map[string]bool{}
	type unit struct {
		name string
		m    float64
	}
	mm, cm, cm2 := unit{"mm", 0.001}, unit{"cm", 0.01}, unit{"cm2", 1e-4}
	figure := func(s basis.Section, measure, printed string, in unit) {
		id := s.Figure(measure)
		require.NotEmpty(t, id, measure)
		e, ok := basis.Find(id)
		require.True(t, ok)
		assert.NotEmpty(t, e.Document)
		table := published.Source{Document: e.Document, Place: s.Name, Mark: e.Mark}
		published.Check(t, table, measure+" ["+in.name+"]", printed, basis.Figure(id)/in.m, published.Within(1e-6, ""))
	}
	for file, shape := range map[string]string{"spun_piles.csv": "spun", "steel_tubes.csv": "tube"} {
		for _, row := range table(t, file) {
			wall := row["T_mm"] + row["t_mm"]
			s, ok := basis.FindSection(shape + " " + row["D_mm"] + " x " + wall)
			require.True(t, ok, row)
			figure(s, "width", row["D_mm"], mm)
			figure(s, "wall", wall, mm)
			d, w := basis.Figure(s.Figure("width")), basis.Figure(s.Figure("wall"))
			assert.InEpsilon(t, number(t, row["A_cm2"]), 1e4*math.Pi*(d-w)*w, 1e-4, s.Name)
			named[s.Name] = true
		}
	}
	for _, row := range table(t, "h_sections.csv") {
		s, ok := basis.FindSection("H " + row["h_mm"] + " x " + row["b_mm"] + " x " + row["tw_mm"] + " x " + row["tf_mm"])
		require.True(t, ok, row)
		for measure, column := range map[string]string{"depth": "h_mm", "width": "b_mm", "web": "tw_mm", "flange": "tf_mm"} {
			figure(s, measure, row[column], mm)
		}
		figure(s, "area", row["A_cm2"], cm2)
		figure(s, "gyration", row["iz_cm"], cm)
		named[s.Name] = true
	}
	for _, s := range basis.Sections() {
		assert.True(t, named[s.Name], "%s stands in no table of testdata", s.Name)
	}
}

func TestASectionThatIsInNoTable(t *testing.T) {
	for _, id := range []string{"section.tube 1 x 1.wall", "section.tube 508 x 12.5.flange", "section.tube 508 x 12", "section."} {
		_, ok := basis.Find(id)
		assert.False(t, ok, id)
	}
	s, _ := basis.FindSection("tube 508 x 12.5")
	assert.Empty(t, s.Figure("flange"))
	e, _ := basis.Find(s.Figure("width"))
	assert.Equal(t, quantity.Lengths, e.Dim)
}
