package desk

import (
	"strings"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/history"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
)

// show answers with one view. The views are
//
//	sizing   the readings of one pile and the five rows of the first screen
//	pile     one pile with all its numbers
//	piles    a page of the list: from, count
//	working  how the number at "step" was made
//	convert  a reading as loads, and a load as readings: pile, reading, load
//	card     the rows of the cabin card of a pile
//	plan     the site from above: width, height of the drawing
//	fleet    the piles against the circuits of all rigs: from, count
//	criteria the pressing criteria by pile type and rig
//	cutting  the list for the crew that cuts, a page at a time: from, count
//	lengths  lengths for payment by pile type, a page of piles: from, count
//	order    the order list of the job, a page of its piles: from, count
//	doubt    what the doubt at the set reading of the pile "of" is made of
//	certificate  what follows from the certificate "of" by itself
//	gauge    the checks of the gauge "of": zero, and against others
//	form     the fields of the thing at "path"
//	kept     the rigs and pile types that can be taken
//	parcel   a rig, a type or all of them, to be taken into another document
//	info     what the document is
//	choices  fields with two values between which nobody has chosen
//	history  who stated what at "path" and below: from, count
//	compare  what differs between the states at two times: from, to
//	import   what a table of piles would become: see showImport
//	export   the piles, or the cutting list, as a table: see showExport
//
// Every number for a person is a text with its unit and with the place of its
// working. With a "trial" the answer is as if that had been entered. data are
// the bytes of a table; out is one that was asked for as bytes.
func (f *file) show(r *document.Node, data []byte) (answer *document.Node, out []byte) {
	f, refused := f.trial(r.Get("trial"))
	switch {
	case refused != nil:
		return refused, nil
	case r.Get("view").Text() == "export":
		return f.showExport(r)
	}
	return f.view(r, data), nil
}

func (f *file) view(r *document.Node, data []byte) *document.Node {
	switch view := r.Get("view").Text(); view {
	case "sizing":
		return f.showSizing(r)
	case "pile":
		return f.showPile(r)
	case "piles":
		return f.showPiles(r)
	case "working":
		return f.showWorking(r)
	case "convert":
		return f.showConvert(r)
	case "card":
		return f.showCard(r)
	case "plan":
		return f.showPlan(r)
	case "fleet":
		return f.showFleet(r)
	case "order":
		return f.showOrder(r)
	case "criteria":
		return f.showCriteria()
	case "cutting":
		return f.showCutting(r)
	case "lengths":
		return f.showLengths(r)
	case "doubt":
		return f.showDoubt(r)
	case "certificate":
		return f.showCertificate(r)
	case "gauge":
		return f.showGauge(r)
	case "form":
		return f.showForm(r)
	case "kept":
		return f.showKept()
	case "parcel":
		return f.showParcel(r)
	case "info":
		return f.showInfo()
	case "choices":
		return f.showChoices()
	case "history":
		return f.showHistory(r)
	case "compare":
		return f.showCompare(r)
	case "import":
		return f.showImport(r, data)
	default:
		return refusal("desk.view", view)
	}
}

func (f *file) showInfo() *document.Node {
	j := f.job()
	return okay().with("job", text(j.ID())).with("title", text(j.Title())).with("readOnly", yes(f.readOnly)).with("sign", text(f.now("decimalSign").Text())).
		with("changes", whole(history.Count(f.root))).with("piles", whole(len(j.Piles()))).
		with("rigs", whole(len(j.Rigs()))).with("types", whole(len(j.PileTypes()))).
		with("choices", whole(len(f.choices))).with("damage", texts(f.harm)).with("problems", texts(f.problems())).Node
}

// says writes a number as an answer holds it; nil is null.
func (f *file) says(n *assess.Number) *document.Node {
	if n == nil {
		return document.NewNull()
	}
	o := newObject().with("says", text(n.Says(f.job().Sign()))).with("unit", text(n.Unit.Symbol))
	if n.Rounded != "" {
		o = o.with("rounded", text(words.Say("rounded."+n.Rounded)))
	}
	return o.with("open", text(n.Ref)).Node
}

func (f *file) textOf(n *assess.Number) string { return n.Text(f.job().Sign()) }

// needs writes the keys of missing fields as they stand in a sentence, each
// once.
func needs(keys []string) string {
	var list []string
	seen := map[string]bool{}
	for _, k := range keys {
		if word := words.Say("need." + k); !seen[word] {
			list, seen[word] = append(list, word), true
		}
	}
	return words.List(list)
}

// pieces writes a make-up: "2 x 6.0 m + 1 x 4.0 m".
func (f *file) pieces(list []assess.Piece) string { return piecesSay(list, f.job().Sign()) }

func piecesSay(list []assess.Piece, sign quantity.DecimalSign) string {
	var parts []string
	for _, p := range list {
		parts = append(parts, words.Say("segments.piece", itoa(p.Count), p.Length.Text(sign)))
	}
	return strings.Join(parts, words.Say("segments.plus"))
}
