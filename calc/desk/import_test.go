package desk_test

import (
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/desk"
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/words"
)

// The headers and texts below are of the sorts that schedules of piles come
// with: common practice, no source.

// preview asks what a table would become; args are further members.
func (x table) preview(text, args string) *document.Node {
	return x.show("import", `,"text":`+quote(text)+args)
}

// idsFor hands in as many ids as a host would.
func idsFor(n int) string {
	list := make([]string, n)
	for i := range list {
		list[i] = fmt.Sprintf(`"0193b000-0000-7000-8000-1%011d"`, i)
	}
	return `,"ids":[` + strings.Join(list, ",") + "]"
}

func (x table) take(text, args string) *document.Node {
	return x.enter("import", `"text":`+quote(text)+args)
}

// shed is a desk with the example job, whose eight piles are C1 to C8.
func shed(t *testing.T) table {
	x := newTable(t)
	x.open("../../examples/quay-shed.json")
	return x
}

// fields lists what the columns of a preview are read as, with their units.
func fields(v *document.Node) string {
	var list []string
	for _, c := range v.Get("columns").Items() {
		one := c.Get("field").Text()
		if unit := c.Get("unit").Text(); unit != "" {
			one += " " + unit
		}
		if one == "" {
			one = "-"
		}
		list = append(list, one)
	}
	return strings.Join(list, ", ")
}

func count(v *document.Node, name string) string { return v.Get("counts").Get(name).Raw() }

// states lists the marks of the rows with their states.
func states(v *document.Node) string {
	var list []string
	for _, row := range v.Get("rows").Items() {
		list = append(list, row.Get("mark").Text()+" "+row.Get("state").Text())
	}
	return strings.Join(list, ", ")
}

// says is all that is said of the rows that are refused.
func says(v *document.Node) string {
	var list []string
	for _, row := range v.Get("refusals").Items() {
		for _, p := range row.Get("problems").Items() {
			list = append(list, row.Get("line").Raw()+": "+p.Text())
		}
	}
	return strings.Join(list, "\n")
}

func TestATableIsPreviewedAndTakenAsOneEntry(t *testing.T) {
	x := shed(t)
	before, list := x.save(), x.show("piles", "").Compact()
	text := "Mark;Load [kN];Founding level [m];Type;Rig\r\n" +
		"C1;900;-5.40;SQ 300;Press 240\r\n" + // as it is
		"C2;950;-5.90;;\r\n" + // another load
		"D1;400;-6.00;sq 300;press 120\r\n" + // new
		"D2;;;;\r\n" + // new, nearly blank
		"C3;nine;;;\r\n" // refused
	v := x.preview(text, `,"defaults":{"criterion":"0193b000-0000-7000-8000-000000000401"}`)
	require.True(t, v.Get("ok").Bool(), v.Compact())
	assert.Equal(t, "mark, workingLoad kN, founding m, type, rig", fields(v))
	assert.Equal(t, "C1 unchanged, C2 changed, D1 new, D2 new, C3 refused", states(v))
	assert.Equal(t, "2", v.Get("ids").Raw())
	assert.Equal(t, "New: 2. Changed: 1. As they are: 1. Not taken: 1.", v.Get("says").Text())
	assert.Equal(t, "6: Working load: “nine” is not a number. Write digits, and a point or a comma for decimals: 900 kN.", says(v))
	change := v.At("/rows/1/changes")
	require.Equal(t, 1, change.Len(), "what is blank changes nothing")
	assert.Equal(t, `{"label":"Working load","before":"900 kN","after":"950 kN"}`, change.Item(0).Compact())
	assert.Equal(t, "-6.00 m", v.At("/rows/2/cells/2/says").Text())
	assert.Equal(t, "SQ 300", v.At("/rows/2/cells/3/says").Text())
	assert.Equal(t, before, x.save(), "a preview changes nothing")

	args := `,"defaults":{"criterion":"0193b000-0000-7000-8000-000000000401"}`
	few := x.take(text, args+idsFor(1))
	assert.Equal(t, "desk.ids", few.Get("code").Text())
	assert.Equal(t, before, x.save(), "whole or not at all")
	a := x.take(text, args+idsFor(2))
	require.True(t, a.Get("ok").Bool(), a.Compact())
	assert.Equal(t, "2", a.Get("new").Raw())
	assert.Equal(t, "1", a.Get("refused").Raw())
	assert.Equal(t, "6", a.At("/refusals/0/line").Raw())

	y := opened(t, x.save())
	d1 := y.show("pile", `,"pile":"0193b000-0000-7000-8000-100000000000"`)
	assert.Equal(t, "D1", d1.Get("mark").Text())
	assert.Equal(t, "Press 120, main jacks", d1.Get("rig").Text(), "the only circuit of the rig")
	assert.Equal(t, "open", d1.Get("state").Text(), d1.Compact())
	assert.Equal(t, "950 kN", y.show("history", `,"path":"/now/piles/0193b000-0000-7000-8000-000000000602/workingLoad"`).At("/rows/0/says").Text())
	again := y.preview(text, args)
	assert.Equal(t, "C1 unchanged, C2 unchanged, D1 unchanged, D2 unchanged, C3 refused", states(again))
	entries := strings.Count(y.save(), `"patch"`)
	require.True(t, y.take(text, args).Get("ok").Bool())
	assert.Equal(t, entries, strings.Count(y.save(), `"patch"`), "nothing new is no entry")

	last := x.show("history", `,"path":"/now"`).At("/rows/0")
	require.True(t, x.enter("undo", `"of":{"sitting":`+quote(last.Get("sitting").Text())+`,"s":`+last.Get("s").Raw()+`}`).Get("ok").Bool())
	assert.Equal(t, list, x.show("piles", "").Compact(), "taken back as one")
}

func TestColumnsAreKnownByTheirWords(t *testing.T) {
	x := shed(t)
	for header, want := range map[string]string{
		"Pile No.\tSWL (kN)\tCut-off Level (m)":                 "mark, workingLoad kN, cutoff m",
		"PILE REF\tLoad/kN\tToe level, m AOD":                   "mark, workingLoad kN, founding m",
		"mark\tPile load in kip\tPiling platform level [ft]":    "mark, workingLoad kip, platform ft",
		"Mark\tDesign action Ed [MN]\tDesign load [MN]":         "mark, - , designAction MN",
		"Id\tCOL [mOD]\tToe Level (m AOD)":                      "mark, cutoff, founding m",
		"Pile\tEasting (mm)\tNorthing\tGroup\tRemarks":          "mark, east mm, north, group, note",
		"Pile mark\tPile head level\tPile head\tHead\tLoad kPa": "mark, -, -, -, workingLoad",
		"Mark\tRake [-]\tStick-up [m]\tFollower\tX\tY\tN":       "mark, rake, stickUp m, follower, -, -, -",
		"No\tSection\tMachine\tJack circuit\tSet criterion":     "mark, type, rig, circuit, criterion",
		"Mark\tWorking load (SLS) [kN]\tPlatform\nlevel (m)":    "mark, workingLoad kN, platform m",
	} {
		if strings.Contains(header, "\n") {
			header = strings.Replace(header, "Platform\nlevel (m)", "\"Platform\nlevel (m)\"", 1)
		}
		v := x.preview(header+"\nC1\t1\t2\n", "")
		assert.Equal(t, strings.ReplaceAll(want, "- ,", "-,"), fields(v), header)
	}
	v := x.preview("Piles of the quay\n\nlot 2\n\nMark\tLoad\tToe level\n\tkN\tm\nC9\t900\t-5\n", "")
	assert.Equal(t, "5", v.Get("header").Raw(), "titles stand above the headers")
	assert.Equal(t, "mark, workingLoad kN, founding m", fields(v), "units stand below them")
	assert.Equal(t, "C9 new", states(v))
}

// No two fields are known by the same word, and each has some.
func TestTheWordsOfColumnsAreOneMeaningEach(t *testing.T) {
	claimed := map[string]string{}
	for _, f := range job.Fields() {
		name, ok := strings.CutPrefix(f.Pattern, "/piles/*/")
		if !ok || strings.Contains(name, "/") {
			continue
		}
		require.True(t, words.Has("header.piles."+name), name)
		for _, w := range append(strings.Split(words.Say("header.piles."+name), ";"), strings.ReplaceAll(words.Say(f.Key()), "-", " ")) {
			w = strings.ToLower(strings.Trim(w, " ?"))
			assert.True(t, claimed[w] == "" || claimed[w] == name, "%q means %s and %s", w, claimed[w], name)
			claimed[w] = name
		}
	}
}

func TestAUnitIsNeverGuessed(t *testing.T) {
	x := shed(t)
	text := "Mark,Load,Toe level [m]\nD1,900,-5.4\nD2,90 tf,-5.4\nD3,,-5.4\n"
	v := x.preview(text, "")
	assert.Equal(t, "D1 refused, D2 new, D3 new", states(v))
	assert.Equal(t, "2: Working load: No unit is given.", says(v))
	q := v.At("/questions/0")
	assert.Equal(t, "unit", q.Get("kind").Text())
	assert.Equal(t, "In which unit is “Load”? Neither the header nor the cell “900” in line 2 says so.", q.Get("says").Text())
	assert.Equal(t, "kN", q.At("/offers/0/value").Text())
	v = x.preview(text, `,"units":{"1":"kip"}`)
	assert.Equal(t, "D1 new, D2 new, D3 new", states(v))
	assert.Equal(t, "900 kip", v.At("/rows/0/cells/1/says").Text())
	assert.Equal(t, "90 tf", v.At("/rows/1/cells/1/says").Text(), "a unit in the cell comes first")
	assert.Zero(t, v.Get("questions").Len())

	v = x.preview("Mark,Load (t)\nD1,90\n", "")
	assert.Equal(t, "“t” alone may be three different units. Choose one.", v.At("/questions/0/says").Text())
	assert.Equal(t, "D1 new", states(x.preview("Mark,Load (t)\nD1,90\n", `,"units":{"1":"tf"}`)))
	assert.Contains(t, x.preview("Mark,Load (kPa)\nD1,90\n", "").At("/questions/0/says").Text(), "“kPa” is not a unit for this")
	assert.Contains(t, says(x.preview("Mark,Load (kN)\nD1,90 ton\n", "")), "“ton” alone may be three different units")

	// A plain ratio is a unit too, and is asked for.
	v = x.preview("Mark,Rake\nD1,0.1\n", "")
	assert.Equal(t, "unit", v.At("/questions/0/kind").Text())
	assert.Equal(t, "D1 new", states(x.preview("Mark,Rake\nD1,0.1\n", `,"units":{"1":""}`)))
	assert.Equal(t, "10 %", x.preview("Mark,Rake\nD1,10\n", `,"units":{"1":"%"}`).At("/rows/0/cells/1/says").Text())
}

func TestAThousandOrADecimalCommaIsAskedForTheWholeTable(t *testing.T) {
	x := shed(t) // whose own decimal sign is the point
	text := "Mark;Load [kN];Toe level [m]\nD1;1,200;-5,40\nD2;1,250;-5,50\nD3;900;-6\n"
	v := x.preview(text, "")
	assert.Equal(t, "D1 refused, D2 refused, D3 new", states(v))
	require.Equal(t, 1, v.Get("questions").Len(), "once")
	q := v.At("/questions/0")
	assert.Equal(t, "1,200 in line 2 can be read in two ways. Which is the decimal sign of this table?", q.Get("says").Text())
	assert.Equal(t, `[{"value":",","label":"comma: 1,2 kN"},{"value":".","label":"point: 1200 kN"}]`, q.Get("offers").Compact())
	assert.Contains(t, says(v), "“1,200” can be read in two ways: 1.200 kN or 1200 kN.")
	for sign, want := range map[string]string{",": "1.200 kN", ".": "1200 kN"} {
		v := x.preview(text, `,"sign":"`+sign+`"`)
		assert.Equal(t, "D1 new, D2 new, D3 new", states(v), sign)
		assert.Equal(t, want, v.At("/rows/0/cells/1/says").Text(), sign)
		assert.Zero(t, v.Get("questions").Len())
	}

	// A point before three digits is in doubt only beside decimal commas.
	assert.Equal(t, "D1 new", states(x.preview("Mark;Toe level [m]\nD1;-5.400\n", "")))
	v = x.preview("Mark;Toe level [m];Load [kN]\nD1;-5,40;1.200\n", "")
	assert.Equal(t, "D1 refused", states(v))
	assert.Equal(t, `[{"value":",","label":"comma: then 1.200 cannot be read"},{"value":".","label":"point: 1.2 kN"}]`, v.At("/questions/0/offers").Compact())

	// Both signs in one number are no question of the table.
	v = x.preview("Mark;Load [kN]\nD1;1.234,5\n", "")
	assert.Zero(t, v.Get("questions").Len())
	assert.Equal(t, "2: Working load: “1.234,5” can be read in two ways: 1234.5 kN or 1.2345 kN.", says(v))
}

func TestRowsAreRefusedWithLineAndReason(t *testing.T) {
	x := shed(t)
	x.enter("add", `"what":"type","ids":["twin1"]`)
	x.enter("add", `"what":"type","ids":["twin2"]`)
	x.typed("/now/pileTypes/twin1/name", "Twin")
	x.typed("/now/pileTypes/twin2/name", "Twin")
	for _, c := range []struct{ text, want string }{
		{"Mark,Load [kN]\nD1,900\nD2,900\nD1,950\n", "2: The mark D1 stands in several lines: 2, 4.\n4: The mark D1 stands in several lines: 2, 4."},
		{"Mark,Load [kN]\n,900\nD2,900\n", "2: The mark is blank."},
		{"Mark,Platform [m],Founding [m]\nD1,12.6,12.6\n", "2: The founding level, 12.6 m, must be below the platform level, 12.6 m."},
		{"Mark,Platform [m],Founding [m]\nD1,10 ft,4 m\n", "2: The founding level, 4 m, must be below the platform level, 10 ft."},
		{"Mark,Founding [m],Cut-off [m]\nD1,-5,-6\n", "2: The cut-off level, -6 m, must be above the founding level, -5 m."},
		{"Mark,Founding [m]\nC1,13\n", "2: The founding level, 13 m, must be below the platform level, 12.60 m.\n2: The cut-off level, 11.20 m, must be above the founding level, 13 m."},
		{"Mark,Type\nD1,SQ 350\n", "2: Pile type: “SQ 350” is not in the job. There is: SQ 300, SP 400, Twin, Twin."},
		{"Mark,Type\nD1,Twin\n", "2: Pile type: Several are called “Twin”. Give them different names first."},
		{"Mark,Group\nD1,Cap 1\n", "2: Group: “Cap 1” is not in the job: none is entered yet."},
		{"Mark,Rig,Circuit\nD1,Press 240,corner jacks\n", "2: Circuit: “corner jacks” is not in the job. There is: main jacks, side jacks."},
		{"Mark,Circuit\nD1,main jacks\n", "2: Circuit: A circuit belongs to a rig, and no rig is named."},
		{"Mark,Load [kN]\nD1,-900\n", "2: Working load: -900 is outside what is allowed here: more than 0 kN, at most 100000 kN."},
		{"Mark,Load [kN]\nD1,1E5\n", "2: Working load: “E5” is not a unit of the list: kN, MN, tf, tonf-US, tonf-UK, kip. Example: 900 kN."},
		{"Mark,Order\nD1,3.5\n", "2: Order of pressing: “3.5” is not a whole number. Allowed: from 0, at most 100000."},
		{"Mark,Follower\nD1,maybe\n", "2: Is a follower used?: “maybe” is not one of: yes, no."},
		{"Mark,Note\nD1," + strings.Repeat("x", 501) + "\n", "2: Note: " + strings.Repeat("x", 119) + "… is outside what is allowed here: 500."},
	} {
		v := x.preview(c.text, "")
		require.True(t, v.Get("ok").Bool(), c.text)
		assert.Equal(t, c.want, says(v), c.text)
		assert.NotContains(t, v.Compact(), "{0}")
	}
	v := x.preview("Mark,Follower,Note\nD1,YES,\"two\nlines\"\n,,\n\n", "")
	assert.Equal(t, "yes", v.At("/rows/0/cells/1/says").Text())
	assert.Equal(t, "two lines", v.At("/rows/0/cells/2/says").Text())
	assert.Equal(t, "1", count(v, "rows"), "a line with nothing in it is no row")
	v = x.preview("Mark,Load [kN],Engineer\nD1,900,\n,,Smith\n", "")
	assert.Equal(t, "1", count(v, "skipped"), "nothing stands in a column that is read")
}

// Levels that a row does not touch are not held against it, and what is wrong
// with a pile already stays as it is.
func TestARowAnswersForWhatItStates(t *testing.T) {
	x := shed(t)
	c1 := "/now/piles/0193b000-0000-7000-8000-000000000601"
	x.typed(c1+"/founding", "13")
	assert.Equal(t, "C1 changed", states(x.preview("Mark,Load [kN]\nC1,901\n", "")))
	assert.Equal(t, "C1 refused", states(x.preview("Mark,Cut-off [m]\nC1,12.9\n", "")))
	assert.Equal(t, "C1 unchanged", states(x.preview("Mark,Load [MN],Cut-off [m]\nC1,0.9,\n", "")), "the same quantity in another unit")
}

func TestAColumnMappedTwiceIsAskedAbout(t *testing.T) {
	x := shed(t)
	text := "Mark,Load [kN],Working load [kN],Toe [m]\nD1,900,950,-5\n"
	v := x.preview(text, "")
	require.True(t, v.Get("ok").Bool())
	assert.Equal(t, "Working load is to be read from “Load [kN]” and “Working load [kN]”. One column can fill it: choose.", v.At("/problems/0").Text())
	assert.Equal(t, "0", count(v, "rows"))
	assert.Equal(t, "900", v.At("/columns/1/sample/0").Text(), "the columns are shown all the same")
	assert.Equal(t, "import.twice", x.take(text, idsFor(1)).Get("code").Text())

	v = x.preview(text, `,"columns":{"2":"workingLoad"}`)
	assert.Equal(t, "mark, -, workingLoad kN, founding m", fields(v), "what a person said goes before the header")
	assert.Equal(t, "mark, workingLoad kN, -, founding m", fields(x.preview(text, `,"columns":{"2":""}`)))
	both := x.preview(text, `,"columns":{"1":"workingLoad","2":"workingLoad"}`)
	assert.Equal(t, 1, both.Get("problems").Len())

	v = x.preview("Pfahl;Last [kN];Niveau in m\nD1;900;-5\n", "")
	assert.Equal(t, "No column is known to hold the marks of the piles. Choose one.", v.At("/problems/0").Text())
	assert.Equal(t, "0", v.Get("header").Raw())
	v = x.preview("Pfahl;Last [kN];Niveau in m\nD1;900;-5\n", `,"header":1,"columns":{"0":"mark","1":"workingLoad","2":"founding"}`)
	assert.Equal(t, "mark, workingLoad kN, founding m", fields(v))
	assert.Equal(t, "D1 new", states(v))
	v = x.preview("D1;900;-5\n", `,"columns":{"0":"mark","1":"workingLoad"},"units":{"1":"kN"}`)
	assert.Equal(t, "D1 new", states(v), "a table without headers")

	for _, args := range []string{`,"columns":{"9":"mark"}`, `,"columns":{"0":"moon"}`, `,"columns":{"x":""}`, `,"separator":"x"`, `,"sign":"x"`, `,"units":{"-1":"m"}`,
		`,"defaults":{"mark":"x"}`, `,"defaults":{"type":"nowhere"}`, `,"defaults":{"circuit":"nowhere"}`} {
		assert.False(t, x.preview(text, args).Get("ok").Bool(), args)
	}
}

func TestTwoSeparatorsAreOffered(t *testing.T) {
	x := shed(t)
	text := "D1;Smith, J\nD2;Smith, A\n"
	v := x.preview(text, "")
	require.True(t, v.Get("ok").Bool())
	assert.Equal(t, "separator", v.At("/questions/0/kind").Text())
	assert.Equal(t, `[{"value":";","label":"semicolon: 2 columns, the first row is D1 | Smith, J"},{"value":",","label":"comma: 2 columns, the first row is D1;Smith | J"}]`,
		v.At("/questions/0/offers").Compact())
	assert.False(t, x.take(text, "").Get("ok").Bool())
	assert.Equal(t, "D1 new, D2 new", states(x.preview(text, `,"separator":";","columns":{"0":"mark","1":"note"}`)))
}

func TestMarksThatASpreadsheetMangledAreWarnedAbout(t *testing.T) {
	x := shed(t)
	for _, mark := range []string{"1-Mar", "Mar-26", "01. Mrz", "1-Mar-26", "2026-03-01", "2026-03-01 00:00:00", "01/03/2026", "1.3.26", "1,00E+05", "1E+05", "1.2E+10", "#NAME?", "#REF!", "#N/A", "####"} {
		v := x.preview("Mark;Load [kN]\n\""+mark+"\";900\n", "")
		assert.Equal(t, mark+" new", states(v))
		assert.Equal(t, 1, v.At("/rows/0/warnings").Len(), mark)
	}
	for _, mark := range []string{"C1a", "1-3", "1-2-3", "A-May-1b", "12", "2026", "P1.2", "E5", "1E5", "#12", "B-Mar", "12/3", "C-1-Dec-x"} {
		assert.Zero(t, x.preview("Mark;Load [kN]\n"+mark+";900\n", "").At("/rows/0/warnings").Len(), mark)
	}
	v := x.preview("Mark;Load [kN]\nc1;900\n", "")
	assert.Equal(t, "The job has a pile C1, which differs from c1 in capitals only.", v.At("/rows/0/warnings/0").Text())
}

func TestCircuitsBelongToTheRigOfTheRow(t *testing.T) {
	x := shed(t)
	rig := "/now/rigs/0193b000-0000-7000-8000-000000000102" // Press 120
	x.enter("add", `"what":"circuit","path":`+quote(rig)+`,"ids":["cc","gg"]`)
	x.typed(rig+"/circuits/cc/name", "Corner jacks")
	// C1 is pressed by the other rig: its circuit cannot stay.
	v := x.preview("Mark,Rig\nC1,Press 120\n", "")
	assert.Equal(t, "2: The circuit that the pile has belongs to another rig. Name one of: main jacks, Corner jacks.", says(v))
	v = x.preview("Mark,Rig,Circuit\nC1,Press 120,corner jacks\n", "")
	assert.Equal(t, `[{"label":"Rig","before":"Press 240","after":"Press 120"},{"label":"Circuit","before":"main jacks","after":"Corner jacks"}]`, v.At("/rows/0/changes").Compact())
	v = x.preview("Mark,Rig\nC1,Press 120\nD1,Press 120\nD2,Press 240\nD3,\n", `,"defaults":{"rig":"0193b000-0000-7000-8000-000000000102","circuit":"cc"}`)
	assert.Equal(t, "C1 changed, D1 new, D2 new, D3 new", states(v))
	assert.Equal(t, "Corner jacks", v.At("/choices/2/choices/1/label").Text(), "of the rig chosen for all rows")
	require.True(t, x.take("Mark,Rig\nC1,Press 120\nD1,Press 120\nD2,Press 240\nD3,\n", `,"defaults":{"rig":"0193b000-0000-7000-8000-000000000102","circuit":"cc"}`+idsFor(3)).Get("ok").Bool())
	rigs := ""
	for _, row := range x.show("piles", `,"find":"D"`).Get("rows").Items() {
		rigs += row.Get("mark").Text() + " " + x.show("pile", `,"pile":`+quote(row.Get("id").Text())).Get("rig").Text() + "; "
	}
	assert.Equal(t, "D1 Press 120, Corner jacks; D2 Press 240; D3 Press 120, Corner jacks; ", rigs)
	assert.NotContains(t, opened(t, x.save()).show("info", "").Get("problems").Compact(), "circuit")
}

// A choice for all rows never stands in for what a row or a pile says.
func TestAChoiceForAllRowsFillsOnlyBlanks(t *testing.T) {
	x := shed(t)
	sp := "0193b000-0000-7000-8000-000000000302"
	v := x.preview("Mark,Load [kN]\nC1,900\nD1,900\n", `,"defaults":{"type":"`+sp+`"}`)
	assert.Equal(t, "C1 unchanged, D1 new", states(v))
	require.True(t, x.take("Mark,Type\nD1,\nD2,SQ 300\n", `,"defaults":{"type":"`+sp+`"}`+idsFor(2)).Get("ok").Bool())
	assert.Equal(t, "SP 400", x.show("pile", `,"pile":"0193b000-0000-7000-8000-100000000000"`).Get("type").Text())
	assert.Equal(t, "SQ 300", x.show("pile", `,"pile":"0193b000-0000-7000-8000-100000000001"`).Get("type").Text())
}

func TestAnImportSettlesWhatWasUnreadOrContested(t *testing.T) {
	x := shed(t)
	c1 := "/now/piles/0193b000-0000-7000-8000-000000000601"
	x.typed(c1+"/workingLoad", "1200 ton")
	require.Contains(t, x.save(), "unread")
	require.True(t, x.take("Mark,Load [kN]\nC1,1200\n", "").Get("ok").Bool())
	assert.NotContains(t, x.save(), "unread")

	// Two copies say two loads; the table says one of them again.
	y := opened(t, x.save())
	one := func(x table, sitting, typed string) {
		a, _ := x.call(`{"verb":"enter","doc":"`+jobID+`","sitting":{"id":"`+sitting+`"},"at":"2026-11-03T07:00:00Z","do":"type","path":`+quote(c1+"/workingLoad")+`,"typed":"`+typed+`"}`, nil)
		require.True(x.t, a.Get("ok").Bool())
	}
	one(x, "hand1", "1000")
	one(y, "hand2", "1100")
	a, _ := x.call(`{"verb":"enter","doc":"`+jobID+`","do":"join"}`, []byte(y.save()))
	require.True(t, a.Get("ok").Bool())
	require.Equal(t, 1, x.show("choices", "").Get("choices").Len())
	load := strings.TrimSuffix(x.show("export", `,"what":"piles"`).Get("text").Text(), "")
	assert.Contains(t, load, "two values")
	held := strings.Fields(x.show("form", `,"path":`+quote(c1)).At("/sections/1/fields/0/echo").Text())[0]
	text := "Mark,Load [kN]\nC1," + held + "\n"
	assert.Equal(t, "C1 changed", states(x.preview(text, "")))
	b, _ := x.call(`{"verb":"enter","doc":"`+jobID+`","sitting":{"id":"hand3"},"at":"2026-11-04T07:00:00Z","do":"import","text":`+quote(text)+`}`, nil)
	require.True(t, b.Get("ok").Bool(), b.Compact())
	assert.Zero(t, x.show("choices", "").Get("choices").Len())
}

func TestIdsAreNewAndDiffer(t *testing.T) {
	x := shed(t)
	before := x.save()
	text := "Mark\nD1\nD2\n"
	for _, ids := range []string{`[]`, `["a","a"]`, `["a",""]`, `["a","0193b000-0000-7000-8000-000000000601"]`, `["a","A"]`} {
		assert.Equal(t, "desk.ids", x.take(text, `,"ids":`+ids).Get("code").Text(), ids)
	}
	assert.Equal(t, before, x.save())
	assert.Equal(t, "import.nobody", x.take("Mark,Load\nD1,900\n", idsFor(1)).Get("code").Text())
	assert.Equal(t, before, x.save())
}

func TestBytesOfATable(t *testing.T) {
	x := shed(t)
	show := func(data, args string) *document.Node {
		a, _ := x.call(`{"verb":"show","doc":"`+jobID+`","view":"import"`+args+`}`, []byte(data))
		return a
	}
	v := show("\xEF\xBB\xBFMark;Note\r\nD1;Kalk – 5 €\r\n", "")
	assert.Equal(t, "D1 new", states(v))
	assert.Nil(t, v.Get("text"), "the table does not go back to who sent it")
	v = show("Mark;Note\r\nD1;caf\xE9\r\n", "")
	assert.Equal(t, "Windows-1252", v.Get("encoding").Text())
	assert.Contains(t, v.Get("encodingSays").Text(), "Windows-1252")
	assert.Equal(t, "café", v.At("/rows/0/cells/1/says").Text())
	for data, want := range map[string]string{
		"":                       "There is nothing in the table.",
		"PK\x03\x04":             "This is no text but a file of another program. Copy the cells and paste them, or save them as CSV.",
		"Mark;Note\nD1;\"a\n":    `A quotation mark opens here and is never closed: "a `,
		"Mark;Note\nD1;\"a\"b\n": `Something stands behind a closing quotation mark: "a"b  A quotation mark inside a cell is doubled: "3"" pipe"`,
	} {
		v := show(data, "")
		assert.False(t, v.Get("ok").Bool())
		assert.Equal(t, want, v.At("/complaints/0/says").Text())
	}
	assert.Equal(t, "2", show("Mark;Note\nD1;\"a\n", "").At("/complaints/0/line").Raw())

	a, _ := x.call(`{"verb":"enter","doc":"`+jobID+`","sitting":{"id":"s1"},"at":"2026-11-04T07:00:00Z","do":"import","ids":["n1"],"show":{"view":"piles","find":"D1"}}`, []byte("Mark;Note\r\nD1;caf\xE9\r\n"))
	require.True(t, a.Get("ok").Bool(), a.Compact())
	assert.Equal(t, "D1", a.At("/view/rows/0/mark").Text())
}

// An import that a host could not hand over waits in the file like any entry.
func TestAnImportWaitsInTheFile(t *testing.T) {
	saved := strings.TrimSuffix(strings.TrimSpace(shed(t).save()), "}")
	pending := `{"verb":"enter","doc":"x","sitting":{"id":"s9"},"at":"2026-11-02T07:05:00Z","do":"import","ids":["n1"],"text":"Mark;Load [kN]\r\nD1;900\r\n"}`
	x := opened(t, saved+`, "pending": [`+pending+`]}`)
	assert.Equal(t, "1", x.show("piles", `,"find":"D1"`).Get("count").Raw())
}

func TestTwentyThousandRows(t *testing.T) {
	x := shed(t)
	text := schedule(20000)
	v := x.preview(text, `,"sign":","`)
	require.True(t, v.Get("ok").Bool(), v.Compact()[:300])
	assert.Equal(t, "20000", count(v, "new"))
	assert.Equal(t, 20, v.Get("rows").Len())
	assert.Less(t, len(v.Compact()), 64<<10)
	page := x.preview(text, `,"sign":",","only":"new","from":19990`)
	assert.Equal(t, "19992", page.At("/rows/0/line").Raw())
	assert.Equal(t, 10, page.Get("rows").Len())

	over := x.preview(text+"P20001;SQ 300;900;12,60;-5,40;11,20;;\r\n", `,"sign":","`)
	assert.Equal(t, "There are too many rows: at most 20000 below the headers are read. Take them in in parts.", over.Get("says").Text())
	assert.Equal(t, "20002", over.At("/complaints/0/line").Raw())

	require.True(t, x.take(text, `,"sign":","`+idsFor(20000)).Get("ok").Bool())
	info := opened(t, x.save()).show("info", "")
	assert.Equal(t, "20008", info.Get("piles").Raw())
}

// Pages of one table are of one reading; what is entered in between is seen.
func TestAPreviewKnowsWhatWasEnteredInBetween(t *testing.T) {
	x := shed(t)
	text := "Mark;Load [kN]\nC1;900\nC2;901\n"
	assert.Equal(t, "C1 unchanged, C2 changed", states(x.preview(text, "")))
	assert.Equal(t, "C2 changed", states(x.preview(text, `,"only":"changed"`)))
	assert.Equal(t, "C1 refused, C2 refused", states(x.preview(text, `,"units":{"1":"MN"}`)), "900 MN is out of range")
	x.typed("/now/piles/0193b000-0000-7000-8000-000000000601/workingLoad", "910")
	assert.Equal(t, "C1 changed, C2 changed", states(x.preview(text, "")))
	other := strings.Replace(text, "900", "910", 1)
	assert.Equal(t, "C1 unchanged, C2 changed", states(x.preview(other, "")))
}

// The largest preview that a table can ask for stays a message of 64 kB.
func TestAPreviewStaysSmall(t *testing.T) {
	var b strings.Builder
	for i := range 200 {
		b.WriteString(strings.Repeat("wide header ", 20) + strconv.Itoa(i) + "\t")
	}
	text := strings.TrimSuffix(b.String(), "\t") + "\n" + strings.Repeat(strings.Repeat(strings.Repeat("x", 60)+"\t", 199)+"y\n", 25)
	v := shed(t).preview(text, `,"columns":{"0":"mark","1":"note"},"header":1`)
	require.True(t, v.Get("ok").Bool())
	assert.Less(t, len(v.Compact()), 64<<10)
}

func FuzzImport(f *testing.F) {
	for _, s := range []string{"Mark;Load [kN]\nC1;900\n", "Mark\tLoad\nD1\t1,200\n", "\"", "Mark,Mark\n1,2\n", "mark;toe [m];platform [m]\nC1;1;0", "Mark;Rake\nx;0.1", "[]();m\n", "Mark (\n"} {
		f.Add(s, ",", "kN")
		f.Add(s, "", "%")
	}
	data, err := os.ReadFile("../../examples/quay-shed.json")
	if err != nil {
		f.Fatal(err)
	}
	d := desk.New()
	f.Fuzz(func(t *testing.T, text, sign, unit string) {
		d.Call(`{"verb":"open","doc":"x","as":"file"}`, data)
		args := `,"doc":"x","sign":` + quote(sign) + `,"units":{"0":` + quote(unit) + `}` + idsFor(50) + `,"text":` + quote(text) + "}"
		answer, _ := d.Call(`{"verb":"show","view":"import"`+args, nil)
		require.NotContains(t, answer, `"fault"`)
		answer, _ = d.Call(`{"verb":"enter","sitting":{"id":"s"},"at":"2026-11-02T07:00:00Z","do":"import"`+args, nil)
		require.NotContains(t, answer, `"fault"`)
		_, saved := d.Call(`{"verb":"save","doc":"x"}`, nil)
		answer, _ = d.Call(`{"verb":"open","doc":"y","as":"file"}`, saved)
		require.Contains(t, answer[:12], `"ok":true`, "what was taken opens again")
	})
}
