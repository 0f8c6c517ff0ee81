package desk

import (
	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/words"
)

// lengthSteps begins the places of the sums of lengths.
const lengthSteps = "lengths/"

// showLengths is what is paid by length: a group for each pile type, and the
// piles behind them, a page at a time.
func (f *file) showLengths(r *document.Node) *document.Node {
	list, left := f.judge().Lengths(nil)
	groups := document.NewList()
	for i, l := range list {
		var notes []string
		if l.Expected > 0 {
			notes = []string{words.Say("lengths.expected", itoa(l.Expected), itoa(l.Piles))}
		}
		line := func(code string, n *assess.Number) *document.Node {
			if n != nil {
				opens := *n
				opens.Ref = lengthSteps + itoa(i+1) + "." + code
				n = &opens
			}
			return f.line(words.Say("lengths."+code), n, "")
		}
		name := named(f.root.Get("now").Get("pileTypes").Get(l.Type).Get("name").Text())
		groups.Append(newGroup(name, "", notes, f.line(words.Say("lengths.piles"), nil, itoa(l.Piles)),
			line("pitched", l.Pitched), line("pressed", l.Pressed), line("below", l.Below), line("cut", l.Cut), f.line(words.Say("lengths.joints"), nil, itoa(l.Joints))))
	}
	ids := f.pilesInOrder()
	from, to := pageOf(r, len(ids))
	var rows []*document.Node
	for _, id := range ids[from:to] {
		a, _ := f.answer(id)
		if a.Segments.Total == nil || a.Head.Below == nil {
			continue
		}
		blank := func(n *assess.Number) string {
			if n == nil {
				return words.Say("leaf.blank")
			}
			return f.textOf(n)
		}
		rows = append(rows, f.line(f.marked(a.ID, a.Mark), a.Segments.Total,
			words.Say("lengths.row", blank(a.Head.Pressed), f.textOf(a.Head.Below), blank(a.Head.Cut), itoa(a.Segments.Joints))))
	}
	groups.Append(newGroup(words.Say("lengths.piles"), "", nil, rows...))
	says := []string{words.Say("lengths.says")}
	if left > 0 {
		says = append(says, words.Say("lengths.left", itoa(left)))
	}
	return f.sheet("lengths").with("lead", texts(says)).with("groups", groups).with("count", whole(len(ids))).with("from", whole(from)).Node
}
