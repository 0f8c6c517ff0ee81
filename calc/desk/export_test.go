package desk_test

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
)

func (x table) export(what, sign string) *document.Node {
	args := `,"what":"` + what + `"`
	if sign != "" {
		args += `,"sign":"` + sign + `"`
	}
	v := x.show("export", args)
	require.True(x.t, v.Get("ok").Bool(), v.Compact())
	return v
}

// sheet reads an export with the standard library: column by header, by mark.
func sheet(t *testing.T, text string, comma rune) (header []string, rows map[string]map[string]string, marks string) {
	require.True(t, strings.HasPrefix(text, "\uFEFF"))
	r := csv.NewReader(strings.NewReader(strings.TrimPrefix(text, "\uFEFF")))
	r.Comma = comma
	all, err := r.ReadAll() // which also asks for as many cells in every row
	require.NoError(t, err)
	rows = map[string]map[string]string{}
	var order []string
	for _, row := range all[1:] {
		one := map[string]string{}
		for i, cell := range row {
			one[all[0][i]] = cell
		}
		rows[row[0]], order = one, append(order, row[0])
	}
	return all[0], rows, strings.Join(order, " ")
}

// What is asked for as bytes is the same table, beside a small answer.
func TestATableAsBytes(t *testing.T) {
	x := shed(t)
	for _, part := range []string{"text", "plain"} {
		answer, out := x.call(`{"verb":"show","doc":"`+jobID+`","view":"export","what":"cutting","sign":",","bytes":"`+part+`"}`, nil)
		require.True(t, answer.Get("ok").Bool(), answer.Compact())
		assert.Equal(t, x.export("cutting", ",").Get(part).Text(), string(out))
		assert.Nil(t, answer.Get("text"))
		assert.Nil(t, answer.Get("plain"))
		assert.Equal(t, "8", answer.Get("rows").Raw())
	}
}

func TestThePilesAsATable(t *testing.T) {
	x := shed(t)
	v := x.export("piles", "")
	assert.Equal(t, "quay-shed-north-row-piles.csv", v.Get("name").Text())
	assert.Equal(t, "8", v.Get("rows").Raw())
	header, rows, marks := sheet(t, v.Get("text").Text(), ',')
	assert.Equal(t, "C1 C2 C3 C4 C5 C6 C7 C8", marks)
	assert.Equal(t, []string{"Mark", "Pile type", "Rig", "Circuit", "Criterion", "Working load [kN]", "Platform level [m]", "Founding level [m]", "Cut-off level [m]"}, header[:9])
	c1 := rows["C1"]
	assert.Equal(t, "-5.40", c1["Founding level [m]"])
	assert.Equal(t, "15.0", c1["Set reading [MPa]"], "as the screen says, see TestAssess")
	assert.Equal(t, "Not calibrated: efficiency 0.95 for set, 1.00 for limits", c1["Calibration"])
	assert.Equal(t, "1.45", c1["Length to cut, from the head [m]"])
	assert.Empty(t, rows["C4"]["Set reading [MPa]"], "no window is open")
	assert.Equal(t, "no window", rows["C4"]["Window"])
	assert.Equal(t, "125 bar", rows["C6"]["Set reading [MPa]"], "another unit stands with its number")

	header, rows, _ = sheet(t, x.export("piles", ",").Get("text").Text(), ';')
	assert.Equal(t, "-5,40", rows["C1"]["Founding level [m]"])
	assert.Contains(t, rows["C1"]["Calibration"], "0,95")
	assert.Contains(t, header, "Length to cut, from the head [m]")

	// Every number is the one on the screen.
	for _, row := range x.show("piles", "").Get("rows").Items() {
		mine := rows[row.Get("mark").Text()]
		for name, member := range map[string]string{"Set reading [MPa]": "set", "Never-exceed reading [MPa]": "never", "Total length [m]": "total", "Length to cut, from the head [m]": "cut"} {
			shown := row.Get(member)
			want := strings.ReplaceAll(shown.Get("says").Text(), ".", ",")
			if unit := shown.Get("unit").Text(); unit == "bar" {
				want += " bar"
			}
			assert.Equal(t, want, mine[name], name)
		}
	}
	for _, args := range []string{"", `,"what":"moon"`, `,"what":"piles","sign":"x"`} {
		assert.False(t, x.show("export", args).Get("ok").Bool(), args)
	}
}

// What was exported is imported again with nothing changed, and into a job
// without piles as the same piles.
func TestWhatIsExportedIsImportedTheSame(t *testing.T) {
	x := shed(t)
	set := func(pile, name, typed string) {
		a := x.typed("/now/piles/0193b000-0000-7000-8000-00000000060"+pile+"/"+name, typed)
		require.True(t, a.Get("ok").Bool() && a.Get("problem") == nil, a.Compact())
	}
	set("1", "mark", "-5")
	set("1", "note", `=HYPERLINK("x"); a, b|c`)
	set("2", "mark", "'@7")
	set("2", "note", "+1")
	set("2", "rake", "10 %")
	set("3", "rake", "0.05")
	set("3", "workingLoad", "85.5 tf")
	set("3", "founding", "-21.5 ft")
	set("4", "mark", `3" "x"`)
	set("4", "east", "1234.567")
	set("4", "north", "-1234.000")
	set("5", "mark", "1,200")
	x.enter("choose", `"path":"/now/piles/0193b000-0000-7000-8000-000000000606/follower","value":"yes"`)
	set("6", "rank", "3")

	empty := opened(t, x.save())
	for _, row := range empty.show("piles", "").Get("rows").Items() {
		empty.enter("strike", `"path":`+quote("/now/piles/"+row.Get("id").Text())+`,"why":"to be read again"`)
	}
	for _, sign := range []string{".", ","} {
		text := x.export("piles", sign).Get("text").Text()
		_, _, _ = sheet(t, text, map[string]rune{".": ',', ",": ';'}[sign])
		args := `,"sign":"` + sign + `"`
		v := x.preview(text, args)
		require.Zero(t, v.Get("problems").Len(), v.Compact())
		require.Zero(t, v.Get("questions").Len(), v.At("/questions").Compact())
		assert.Equal(t, "8", count(v, "unchanged"), "%s\n%s", sign, v.Compact())

		y := opened(t, empty.save())
		a := y.take(text, args+idsFor(8))
		require.True(t, a.Get("ok").Bool(), a.Compact())
		assert.Equal(t, "8", a.Get("new").Raw())
		piles := func(x table) (list []string) {
			root, _ := document.Read([]byte(x.save()))
			for _, p := range root.At("/now/piles").Members() {
				if p.Get("struck") == nil {
					list = append(list, string(p.Canonical()))
				}
			}
			return list
		}
		assert.ElementsMatch(t, piles(x), piles(y), "digit for digit, with decimal sign %s", sign)
	}
}

func TestTextsThatCouldNotBeReadAreExportedAsTyped(t *testing.T) {
	x := newTable(t)
	x.newSizing()
	x.typed("/now/piles/"+pileID+"/mark", "C1")
	x.typed(loadPath, "1,200")
	_, rows, _ := sheet(t, x.export("piles", "").Get("text").Text(), ',')
	assert.Equal(t, "1,200", rows["C1"]["Working load"])
}

// The table of a job without piles is a form to fill in.
func TestAnEmptyScheduleIsAForm(t *testing.T) {
	x := newTable(t)
	x.newSizing()
	x.enter("strike", `"path":"/now/piles/`+pileID+`","why":"x"`)
	assert.Equal(t, "\uFEFFMark,Pile type,Rig,Circuit,Criterion,Working load,Platform level,Founding level,Cut-off level\r\n", x.export("piles", "").Get("text").Text())
}

func TestTheCuttingList(t *testing.T) {
	x := shed(t)
	v := x.export("cutting", "")
	header, rows, marks := sheet(t, v.Get("text").Text(), ',')
	assert.Equal(t, "C1 C2 C3 C4 C5 C6 C7 C8", marks)
	assert.Equal(t, []string{"Mark", "Head", "Head level [m]", "Level of the saw cut [m]", "Length to cut, from the head [m]", "Saw cut above platform [m]", "Height to build up [m]", "What to do"}, header)
	// By hand: head 13.25, cut-off 11.20, bars 0.60: saw at 11.80, cut 1.45, 0.80 below the platform of 12.60.
	assert.Equal(t, map[string]string{"Mark": "C1", "Head": "surveyed", "Head level [m]": "13.25", "Level of the saw cut [m]": "11.80",
		"Length to cut, from the head [m]": "1.45", "Saw cut above platform [m]": "-0.80", "Height to build up [m]": "", "What to do": "cut 1.45 m from the head, saw at 11.80 m"}, rows["C1"])
	// Head 10.85 below cut-off 11.20, lap 0.70: build up 0.35 + 0.70.
	assert.Equal(t, "1.05", rows["C7"]["Height to build up [m]"])

	lines := strings.Split(strings.TrimSpace(v.Get("plain").Text()), "\n")
	require.Len(t, lines, 10)
	assert.Equal(t, "Cutting list: Quay shed, north row", lines[0])
	assert.Equal(t, "C1: cut 1.45 m from the head, saw at 11.80 m", lines[1])
	assert.Equal(t, "C2: expected: cut 2.30 m from the head, saw at 11.80 m; survey the head first", lines[2])
	assert.Equal(t, "C7: head too low, break back and build up 1.05 m", lines[7])
	assert.Contains(t, lines[9], "heave check")
	assert.Contains(t, x.export("cutting", ",").Get("plain").Text(), "C1: cut 1,45 m from the head, saw at 11,80 m")

	// What is not known is said, not left out.
	x.typed("/now/piles/0193b000-0000-7000-8000-000000000603/cutoff", "")
	x.typed("/now/pileTypes/0193b000-0000-7000-8000-000000000301/lap", "")
	v = x.export("cutting", "")
	_, rows, _ = sheet(t, v.Get("text").Text(), ',')
	assert.Equal(t, "Still needed: cut-off level.", rows["C3"]["What to do"])
	assert.Contains(t, v.Get("plain").Text(), "\nNot known yet: C3.\n")
	assert.Contains(t, v.Get("plain").Text(), "C7: head too low, a build-up is needed; its height is not known\n")

	y := newTable(t)
	y.newSizing()
	assert.Equal(t, "Cutting list\nNo head is known yet.\nNot known yet: not named.\nSaw only after the heave check and the release by the engineer.\n", y.export("cutting", "").Get("plain").Text())
}

func BenchmarkExportPiles(b *testing.B) {
	d := benchmarkOpened(b)
	b.ReportAllocs()
	for b.Loop() {
		d.Call(`{"verb":"show","doc":"`+jobID+`","view":"export","what":"piles"}`, nil)
	}
}
