package words

// sources are the words for where figures come from.
var sources = map[string]string{
	"mark.S": "seen in a published document", "mark.s": "seen only as quoted by others; check against your copy",
	"mark.M": "recalled from memory; check against your copy", "mark.P": "common practice, no source", "mark.O": "our own choice",
	"basis.factor": "2.0 is the conventional factor; 2.2 to 2.5 stand in several regional rules. The designer decides.",
	"leaf.stated":  "Stated in the job", "leaf.typed": "A reading or load that was asked about", "leaf.tried": "tried only, not entered", "leaf.figure": "Borrowed figure", "leaf.search": "Found by an exact search: no cheaper make-up exists",
	"leaf.conversion": "{0} = {1}", "leaf.record": "Surveyed level, as recorded", "leaf.contested": "two values are stated and nobody has chosen", "leaf.blank": "nothing entered",
}
