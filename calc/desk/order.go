package desk

import (
	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
)

// orderSteps begins the places of the working of the order list.
const orderSteps = "order/"

// ordered is the order list, made once for a state of the job.
func (f *file) ordered() *assess.Order {
	if f.orderMade == nil {
		made := f.judge().Order(nil)
		f.orderMade = &made
	}
	return f.orderMade
}

// showOrder is the order list of the job as a sheet: the lengths to have in the
// yard, what that costs against the least there can be, and the piles, a page
// of them at a time. Only what was opened gets a working.
func (f *file) showOrder(r *document.Node) *document.Node {
	o := f.ordered()
	s := f.sheet("order")
	if len(o.Lines) == 0 && len(o.Left) == 0 {
		return s.with("lead", texts([]string{words.Say("order.none")})).with("groups", document.NewList()).Node
	}
	var says []string
	switch {
	case o.Missing > 0:
		says = append(says, words.Say("order.missing", itoa(o.Missing)))
		if o.Lacking {
			says = append(says, words.Say("segment.order.lacking"))
		} else {
			says = append(says, words.Say("segment.order.fewer"))
		}
	case o.Proven:
		says = append(says, words.Say("segment.order.proven"))
	case o.Gap != nil:
		says = append(says, words.Say("segment.order.gap", f.textOf(o.Gap)))
	case o.Shared:
		says = append(says, words.Say("order.shared"))
	}
	if len(o.Close) > 0 {
		says = append(says, words.Say("segment.order.close", words.List(o.Close)))
	}
	if o.Done > 0 {
		says = append(says, words.Say("order.done", itoa(o.Done)))
	}
	var lines []*document.Node
	for i, l := range o.Lines {
		parts := words.Say("order.line", itoa(l.Taken), itoa(l.Spares))
		if l.Count >= 0 {
			parts += " " + words.Say("order.yard", itoa(l.Count))
			if l.Missing.V > 0 {
				parts += " " + words.Say("order.short", f.textOf(l.Missing))
			}
		}
		ordered := *l.Ordered
		ordered.Ref = orderSteps + "line." + itoa(i+1) + ".ordered"
		label := f.textOf(l.Length)
		if l.Name != "" {
			label += ", " + l.Name
		}
		lines = append(lines, f.line(label, &ordered, parts))
	}
	groups := document.NewList(newGroup(words.Say("order.lines"), "", nil, lines...))
	if o.Cost != nil {
		cost := *o.Cost
		cost.Ref = orderSteps + "cost"
		sums := []*document.Node{f.line(words.Say("order.pieces"), nil, itoa(o.Pieces)), f.line(words.Say("order.joints"), nil, itoa(o.Joints)),
			f.line(words.Say("line.total"), o.Total, ""), f.line(words.Say("line.offCut"), o.OffCut, ""), f.line(words.Say("line.cost"), &cost, "")}
		if o.Gap != nil {
			gap := *o.Gap
			gap.Ref = orderSteps + "gap"
			sums = append(sums, f.line(words.Say("order.gap"), &gap, ""))
		}
		if o.Saved != nil {
			sums = append(sums, f.line(words.Say("order.saved"), o.Saved, ""))
		}
		groups.Append(newGroup(words.Say("order.sums"), "", nil, sums...))
	}
	var again []*document.Node
	for _, reused := range o.Reused {
		again = append(again, f.line(words.Say("order.again", reused.From, reused.To), reused.Length, ""))
	}
	if len(again) > 0 {
		groups.Append(newGroup(words.Say("order.reused"), "", nil, again[:min(len(again), mostRows)]...))
	}
	var left []*document.Node
	for _, p := range o.Left[:min(len(o.Left), mostRows)] {
		why := words.Say("segments.needs", needs(p.Needs))
		if p.Problem != nil {
			why = words.Note(*p.Problem)
		}
		left = append(left, f.line(f.marked(p.ID, p.Mark), nil, why))
	}
	if len(left) > 0 {
		groups.Append(newGroup(words.Say("order.left"), "", []string{words.Say("order.leftSays", itoa(len(o.Left)))}, left...))
	}
	from, to := pageOf(r, len(o.Piles))
	var piles []*document.Node
	for _, p := range o.Piles[from:to] {
		offCut := &assess.Number{V: float64(p.OffCut), Unit: quantity.Must("m"), Decimals: 2, Ref: "search:"}
		piles = append(piles, f.line(f.marked(p.ID, p.Mark), offCut, f.pieces(p.Pieces)))
	}
	groups.Append(newGroup(words.Say("order.piles"), "", nil, piles...))
	return s.with("lead", texts(says)).with("groups", groups).with("count", whole(len(o.Piles))).with("from", whole(from)).
		with("fields", document.NewList(f.field("/now/order/spares"), f.field("/now/order/reuse"), f.field("/now/order/least"), f.field("/now/order/loss"))).Node
}

// sheet begins an answer that a screen shows as it comes: sentences, and groups
// of labelled numbers.
func (f *file) sheet(name string) object {
	return okay().with("over", text(f.job().Title())).with("title", text(words.Say("sheet."+name)))
}

func newGroup(title, says string, notes []string, lines ...*document.Node) *document.Node {
	return newObject().with("title", text(title)).with("says", text(says)).with("notes", texts(notes)).with("lines", document.NewList(lines...)).Node
}
