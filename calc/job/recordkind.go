package job

import "gaugewright/calc/quantity"

// recordKind describes one kind of record: what stands beside its parts, which
// columns its lines may have and which events it may hold. A record is
//
//	{ "kind": "drive", "pile": <id>,
//	  "parts": { <sitting>: { "from": <moment>, "columns": "s m MPa", "lines": ["75 0.50 2.0"],
//	                          "events": [ { "s": 0, "is": "set-up", "rig": <id>, ... } ] } } }
//
// It only grows: one part for each sitting that adds to it (a sitting that
// changes its columns adds a second part under its id, ".", and a number from
// 2). What was written wrongly stays and is corrected, or struck out, by a later
// event. Kinds and events that this version does not know are kept.
type recordKind struct {
	kind    string
	members []Field
	columns []ColumnRule
	events  []event
	shape   *shape
	happens map[string]*shape
}

// event is what may happen, by the text of "is".
type event struct {
	is     string
	fields []Field
}

// everywhere are the events of all kinds of records. The line or event that a
// correction names is counted from 0 in the part named.
var everywhere = []event{
	{"correction", []Field{words("/part"), counted("/line", 0, 1e6), words("/says"), words("/why"), words("/by")}},
	{"struck out", []Field{words("/part"), counted("/line", 0, 1e6), counted("/event", 0, 1e6), words("/why"), words("/by")}},
	{"remark", []Field{words("/says"), words("/by")}},
}

// A set-up says which rig, circuit, gauge, certificate and ballast are in
// force from here on; every change of one is another set-up.
var setUp = event{"set-up", []Field{
	reference("/rig", "rigs"), reference("/circuit", "circuits"), reference("/gauge", "gauges"),
	reference("/certificate", "certificates"), mass("/ballast", false), celsius("/celsius"), words("/operator"),
}}

var witnessed = []event{
	{"witness", []Field{words("/name"), words("/role")}},
	{"not witnessed", []Field{words("/why")}},
}

// recordKinds is schema 1 of "records".
var recordKinds = made([]recordKind{
	{
		kind:    "drive",
		members: []Field{needed(reference("/pile", "piles"))},
		columns: []ColumnRule{
			atColumn,
			lengthColumn("toe", false, false, 300), // depth of the toe below platform
			readingColumn,
			lengthColumn("head", true, true, 300), // height of the head above platform
			{Name: "peak", Dim: quantity.Pressures, Named: true, Max: mostOil}, // highest reading seen since the line before
			{Name: "still", Flag: true},                                        // ram still
			enteredColumn,
		},
		events: append([]event{
			setUp,
			{"segment", []Field{reference("/stock", "stock"), words("/mark"), length("/length", 0, 60), date("/cast"), mass("/mass", false)}},
			{"splice start", []Field{choice("/kind", spliceKinds...), words("/by")}},
			{"splice end", []Field{choice("/kind", spliceKinds...), words("/by")}},
			{"regrip", nil}, {"release", nil},
			{"stop", []Field{words("/why")}}, {"go on", nil},
			{"follower on", []Field{length("/length", 0, 50)}}, {"follower off", nil},
			{"obstruction", []Field{length("/depth", 0, 300), words("/says")}},
			{"pre-bore", []Field{length("/depth", 0, 300), size("/width", 10)}},
			{"re-press", []Field{words("/why")}},
			{"end", []Field{words("/why")}},
		}, witnessed...),
	},
	{
		kind: "hold",
		members: []Field{needed(reference("/pile", "piles")), reference("/drive", "records"),
			choice("/reference", "independent level", "mark off the rig", "rig")},
		columns: []ColumnRule{atColumn, readingColumn, lengthColumn("movement", false, true, 2), enteredColumn},
		events:  append([]event{setUp}, witnessed...),
	},
	{
		kind:    "level",
		members: []Field{needed(reference("/pile", "piles")), needed(choice("/of", "head", "heave", "platform", "ground")), words("/by")},
		columns: []ColumnRule{atColumn, lengthColumn("level", false, true, anyLevel), enteredColumn},
	},
	{
		kind:    "position",
		members: []Field{needed(reference("/pile", "piles")), words("/by")},
		columns: []ColumnRule{atColumn, lengthColumn("level", false, true, anyLevel),
			lengthColumn("east", true, true, anyPlace), lengthColumn("north", true, true, anyPlace),
			{Name: "tiltEast", Named: true, Signed: true, Max: 1}, {Name: "tiltNorth", Named: true, Signed: true, Max: 1},
			enteredColumn},
	},
	{
		kind:    "zero",
		members: []Field{needed(reference("/gauge", "gauges")), words("/by")},
		columns: []ColumnRule{atColumn, {Name: "reading", Dim: quantity.Pressures, Signed: true, Max: mostOil}, enteredColumn},
	},
	{
		kind:    "comparison",
		members: []Field{needed(reference("/gauge", "gauges")), needed(reference("/other", "gauges")), words("/by")},
		columns: []ColumnRule{atColumn, readingColumn, {Name: "other", Dim: quantity.Pressures, Max: mostOil}, enteredColumn},
	},
})

// partFields describe one part of a record, whatever its kind. Columns, lines
// and events are looked at by kind.
var partFields = []Field{
	instant("/from"), words("/columns"), {Pattern: "/lines", Kind: Any, List: true}, {Pattern: "/events", Kind: Any, List: true},
}

var partShape = shapeOf(partFields)

// recordMembers stand in every record.
var recordMembers = join([]Field{needed(words("/kind")), words("/note")}, struck(""))

var recordShape = shapeOf(recordMembers)

// eventMembers stand in every event.
var eventMembers = []Field{needed(number("/s")), needed(words("/is"))}

var eventShape = shapeOf(eventMembers)

func made(kinds []recordKind) []recordKind {
	for i := range kinds {
		k := &kinds[i]
		k.members = join(recordMembers, k.members)
		k.shape = shapeOf(k.members)
		k.events = append(k.events, everywhere...)
		k.happens = map[string]*shape{}
		for n := range k.events {
			e := &k.events[n]
			e.fields = join(eventMembers, e.fields)
			k.happens[e.is] = shapeOf(e.fields)
		}
	}
	return kinds
}

// kindOf finds the description of a kind of record.
func kindOf(kind string) *recordKind {
	for i := range recordKinds {
		if recordKinds[i].kind == kind {
			return &recordKinds[i]
		}
	}
	return nil
}
