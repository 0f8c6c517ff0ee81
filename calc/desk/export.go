package desk

import (
	"strings"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/table"
	"gaugewright/calc/words"
)

// showExport answers the piles of the job as a table, in the order of their
// marks. The arguments:
//
//	what    "piles": what is stated of each pile, as "import" reads it again, and
//	        what was computed; "cutting": what the cutting crew needs
//	sign    decimal sign of the table, "." or ","; the job's where it is absent
//	bytes   "text" or "plain": that one comes as bytes beside the answer, and
//	        neither stands in it; the table of 5,000 piles is a megabyte
//
// The members of the answer:
//
//	text    the table: RFC 4180 in UTF-8 with a byte order mark; semicolons beside
//	        decimal commas, else commas
//	name    a name for its file
//	rows    how many piles stand in it
//	plain   of the cutting list: the same for a messenger, a line a pile
//
// A column has one unit, in its header; a number in another unit stands with it
// in its cell, digit for digit as it was stated. What is not known is blank. A
// set reading stands there only where the window is open, and its calibration
// beside it.
func (f *file) showExport(r *document.Node) (*document.Node, []byte) {
	sign := f.job().Sign()
	switch said := r.Get("sign").Text(); said {
	case "":
	case ".", ",":
		sign = quantity.DecimalSign(said[0])
	default:
		return refusal("typed.choice", said, "., ,"), nil
	}
	s := &sheet{f: f, sign: sign, ids: f.pilesInOrder(), contests: f.contests()}
	plain, what, asked := "", r.Get("what").Text(), r.Get("bytes").Text()
	switch what {
	case "piles":
		s.piles()
	case "cutting":
		plain = s.cutting()
	default:
		return refusal("typed.choice", what, "piles, cutting"), nil
	}
	name := strings.TrimSuffix(f.fileName(), ".job.json") + "-" + what + ".csv"
	o := okay().with("name", text(name)).with("rows", whole(len(s.ids)))
	if asked == "plain" {
		return o.Node, []byte(plain)
	}
	written := table.Write(s.rows(), table.SeparatorFor(sign))
	switch {
	case asked == "text":
		return o.Node, []byte(written)
	case what == "cutting":
		o = o.with("plain", text(plain))
	}
	return o.with("text", text(written)).Node, nil
}

// sheet is a table in the making: a row a pile, column by column.
type sheet struct {
	f       *file
	sign    quantity.DecimalSign
	ids     []string
	columns []sheetColumn

	contests map[string]bool
}

type sheetColumn struct {
	label string
	cells []sheetCell // one a pile
	keep  bool        // even where it is blank
}

// sheetCell is a text, or the digits of a number with its unit.
type sheetCell struct {
	text   string
	unit   string
	number bool
}

func (s *sheet) column(label string, keep bool, cell func(i int) sheetCell) {
	c := sheetColumn{label: label, keep: keep, cells: make([]sheetCell, len(s.ids))}
	for i := range s.ids {
		c.cells[i] = cell(i)
	}
	s.columns = append(s.columns, c)
}

// rows writes the columns, but for those in which nothing stands.
func (s *sheet) rows() [][]table.Cell {
	rows := make([][]table.Cell, 1+len(s.ids))
	for _, c := range s.columns {
		unit, used, bare := c.unit()
		if !used && !c.keep {
			continue
		}
		header := c.label
		switch {
		case unit != "":
			header = words.Say("export.unit", header, unit)
		case bare:
			header = words.Say("export.unit", header, plainNumber)
		}
		rows[0] = append(rows[0], table.Cell{Text: header})
		for i, cell := range c.cells {
			made := table.Cell{Text: cell.text, Number: cell.number}
			if cell.number && cell.unit != unit {
				made = table.Cell{Text: cell.text + " " + cell.unit}
			}
			rows[i+1] = append(rows[i+1], made)
		}
	}
	return rows
}

// plainNumber is written for the unit of plain numbers.
const plainNumber = "-"

// unit is the unit of most numbers of a column. Plain numbers come before any
// unit (bare): they cannot say in their cell that they have none.
func (c sheetColumn) unit() (unit string, used, bare bool) {
	count := map[string]int{}
	for _, cell := range c.cells {
		used = used || cell.text != ""
		if !cell.number {
			continue
		}
		count[cell.unit]++
		bare = bare || cell.unit == ""
		if count[cell.unit] > count[unit] {
			unit = cell.unit
		}
	}
	if bare {
		return "", used, true
	}
	return unit, used, false
}

// usual are the fields whose columns stand there even where no pile states
// them: the table of a job without piles is a form to fill in.
var usual = map[string]bool{"mark": true, "type": true, "rig": true, "circuit": true, "criterion": true, "workingLoad": true,
	"platform": true, "founding": true, "cutoff": true}

// piles makes the columns of the schedule.
func (s *sheet) piles() {
	for _, f := range pileFields() {
		s.column(words.Say(f.Key()), usual[f.name], func(i int) sheetCell { return s.stated(s.ids[i], f) })
	}
	answers := s.answers()
	number := func(code string, of func(a *assess.Answer) *assess.Number) {
		s.column(words.Say(code), false, func(i int) sheetCell { return s.number(of(&answers[i])) })
	}
	says := func(code string, of func(a *assess.Answer) string) {
		s.column(words.Say(code), false, func(i int) sheetCell { return sheetCell{text: of(&answers[i])} })
	}
	says("export.window", func(a *assess.Answer) string { return words.Say("state." + string(a.State)) })
	number("line.setLoad", func(a *assess.Answer) *assess.Number { return a.SetLoad })
	number("line.set", func(a *assess.Answer) *assess.Number { return whenOpen(*a, a.Set) })
	number("line.never", func(a *assess.Answer) *assess.Number { return a.Never })
	says("export.calibration", s.calibration)
	says("line.pieces", func(a *assess.Answer) string { return piecesSay(a.Segments.Pieces, s.sign) })
	s.column(words.Say("export.joints"), false, func(i int) sheetCell {
		if made := &answers[i].Segments; len(made.Pieces) > 0 {
			return sheetCell{text: itoa(made.Joints)}
		}
		return sheetCell{}
	})
	number("line.need", func(a *assess.Answer) *assess.Number { return a.Segments.Need })
	number("line.total", func(a *assess.Answer) *assess.Number { return a.Segments.Total })
	number("line.offCut", func(a *assess.Answer) *assess.Number { return a.Segments.OffCut })
	s.heads(answers)
}

// cutting makes the columns of the cutting list, and its text for a messenger.
func (s *sheet) cutting() string {
	marks := func(i int) string { return s.f.now("piles").Get(s.ids[i]).Get("mark").Text() }
	s.column(words.Say("field.piles.mark"), true, func(i int) sheetCell { return sheetCell{text: marks(i)} })
	answers := s.answers()
	s.heads(answers)
	title := words.Say("cutting.untitled")
	if name := s.f.job().Title(); name != "" {
		title = words.Say("cutting.title", name)
	}
	lines := []string{title}
	var unknown []string
	for i := range answers {
		if answers[i].Head.State == "" {
			unknown = append(unknown, named(marks(i)))
			continue
		}
		lines = append(lines, words.Say("cutting.line", named(marks(i)), s.toDo(answers[i].Head)))
	}
	if len(lines) == 1 {
		lines = append(lines, words.Say("cutting.none"))
	}
	if len(unknown) > 0 {
		lines = append(lines, words.Say("cutting.unknown", strings.Join(unknown, ", ")))
	}
	return strings.Join(append(lines, words.Say("note.releaseToCut")), "\n") + "\n"
}

// heads makes the columns about the pile heads.
func (s *sheet) heads(answers []assess.Answer) {
	number := func(code string, of func(h *assess.Head) *assess.Number) {
		s.column(words.Say(code), false, func(i int) sheetCell { return s.number(of(&answers[i].Head)) })
	}
	s.column(words.Say("export.head"), false, func(i int) sheetCell {
		switch h := &answers[i].Head; {
		case h.State == "":
			return sheetCell{}
		case h.Surveyed:
			return sheetCell{text: words.Say("export.surveyed")}
		}
		return sheetCell{text: words.Say("export.expected")}
	})
	number("export.level", func(h *assess.Head) *assess.Number { return h.Level })
	number("line.saw", func(h *assess.Head) *assess.Number { return h.Saw })
	number("line.cut", func(h *assess.Head) *assess.Number { return h.Cut })
	number("line.above", func(h *assess.Head) *assess.Number { return h.Above })
	number("line.short", func(h *assess.Head) *assess.Number { return h.Short })
	number("line.buildUp", func(h *assess.Head) *assess.Number { return h.BuildUp })
	s.column(words.Say("export.toDo"), false, func(i int) sheetCell { return sheetCell{text: s.toDo(answers[i].Head)} })
}

// toDo is the instruction for a head in a few words. From a level that is only
// expected nobody may saw, and it says so.
func (s *sheet) toDo(h assess.Head) string {
	say := func(n *assess.Number) string {
		if n == nil {
			return ""
		}
		return n.Text(s.sign)
	}
	says := ""
	switch {
	case len(h.Needs) > 0:
		return words.Say("head.needs", needs(h.Needs))
	case h.State == "":
		return ""
	case h.State == "build up" && h.BuildUp == nil:
		says = words.Say("cutting.build up.unknown")
	case h.State == "to cut":
		says = words.Say("cutting.to cut", say(h.Cut), say(h.Saw))
	case h.State == "bars short":
		says = words.Say("cutting.bars short", say(h.Short))
	default:
		says = words.Say("cutting."+h.State, say(h.BuildUp))
	}
	if !h.Surveyed {
		return words.Say("cutting.expected", says)
	}
	return says
}

// answers assesses all piles, without the places of their numbers.
func (s *sheet) answers() []assess.Answer {
	list := make([]assess.Answer, len(s.ids))
	judged := s.f.judge()
	for i, id := range s.ids {
		list[i], _ = judged.Pile(id, nil)
	}
	return list
}

func (s *sheet) number(n *assess.Number) sheetCell {
	if n == nil {
		return sheetCell{}
	}
	return sheetCell{text: n.Says(s.sign), unit: n.Unit.Symbol, number: true}
}

func (s *sheet) calibration(a *assess.Answer) string {
	switch {
	case a.Low == nil:
		return ""
	case a.Single:
		return words.Say("place", words.Say("efficiency.head"), words.Say("efficiency.single", a.Low.Text(s.sign)))
	}
	return words.Say("place", words.Say("efficiency.head"), words.Say("efficiency.two", a.Low.Text(s.sign), a.High.Text(s.sign)))
}

// stated is what a pile states of a field, digit for digit. A text that could
// not be read stands there as it was typed; where two copies state two values,
// neither does.
func (s *sheet) stated(id string, f pileField) sheetCell {
	pile := s.f.now("piles").Get(id)
	held := pile.Get(f.name).Text()
	if unread := s.f.root.Get("unread"); unread != nil || len(s.contests) > 0 {
		path := document.Join("/now/piles", id) + "/" + f.name
		if s.contests[path] {
			return sheetCell{text: words.Say("export.contested")}
		}
		if raw := unread.Get(path).Text(); held == "" && raw != "" {
			return sheetCell{text: raw}
		}
	}
	switch f.Kind {
	case job.Quantity:
		if q, err := quantity.ParseStated(held, f.Dim); err == nil {
			return sheetCell{text: quantity.Localise(q.Digits, s.sign), unit: q.Unit.Symbol, number: true}
		}
	case job.Count:
		return sheetCell{text: held}
	case job.Choice:
		if held != "" {
			return sheetCell{text: words.Say("choice." + held)}
		}
	case job.Reference:
		return sheetCell{text: s.f.calledIn(f.To, pile, held)}
	}
	return sheetCell{text: held}
}

// calledIn is the name of the thing that a pile names; blank where it has none.
func (f *file) calledIn(collection string, pile *document.Node, id string) string {
	things := f.now(collection)
	if collection == "circuits" {
		things = f.now("rigs").Get(pile.Get("rig").Text()).Get("circuits")
	}
	return things.Get(id).Get("name").Text()
}
