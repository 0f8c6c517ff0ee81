package words

// tables are what is said about tables that come in and go out, and the words
// by which the columns of a schedule of piles are known: "header." and the name
// of the field. Words with two meanings in the trade are left out: such a column
// is shown as not read, and a person says what it is.
var tables = map[string]string{
	"table.size":     "The table is too large: {0} bytes; at most {1} are read.",
	"table.empty":    "There is nothing in the table.",
	"table.workbook": "This is no text but a file of another program. Copy the cells and paste them, or save them as CSV.",
	"table.control":  "This is no text: it holds {0}. Save it as CSV in UTF-8.",
	"table.utf8":     "The text says that it is UTF-8, but {0} is not. Save it as CSV in UTF-8 again.",
	"table.utf16":    "Half a character stands here: {0}. Save it as CSV in UTF-8.",
	"table.byte":     "The text is neither UTF-8 nor Windows-1252: {0}. Save it as CSV in UTF-8.",
	"table.rows":     "There are too many rows: at most {1} below the headers are read. Take them in in parts.",
	"table.columns":  "There are too many columns: at most {1} are read.",
	"table.open":     "A quotation mark opens here and is never closed: {0}",
	"table.quote":    "Something stands behind a closing quotation mark: {0} A quotation mark inside a cell is doubled: {2}",

	"separator.semicolon": "semicolon", "separator.tab": "tab", "separator.comma": "comma", "separator.bar": "vertical bar", "separator.none": "none: one column",

	"import.column":    "Column {0}",
	"import.windows":   "The text was read as Windows-1252, because it is not UTF-8: check letters with accents.",
	"import.separator": "The columns can be parted in {0} ways. Choose the one that fits.",
	"import.parted":    "{0}: {1} columns, the first row is {2}",
	"import.cell":      " | ",

	"import.noMark": "No column is known to hold the marks of the piles. Choose one.",
	"import.twice":  "{0} is to be read from {1}. One column can fill it: choose.",

	"import.unit":    "In which unit is {0}? Neither the header nor the cell {1} in line {2} says so.",
	"import.signAsk": "{0} in line {1} can be read in two ways. Which is the decimal sign of this table?",
	"import.comma":   "comma: {0}", "import.point": "point: {0}",
	"import.commaNot": "comma: then {0} cannot be read", "import.pointNot": "point: then {0} cannot be read",

	"import.two":         "“{0}” can be read in two ways: {1}.",
	"import.noUnit":      "No unit is given.",
	"import.unknown":     "“{0}” is not in the job. There is: {1}.",
	"import.unknownNone": "“{0}” is not in the job: none is entered yet.",
	"import.named":       "Several are called “{0}”. Give them different names first.",
	"import.more":        "and {0} more",
	"import.noRig":       "A circuit belongs to a rig, and no rig is named.",
	"import.otherRig":    "The circuit that the pile has belongs to another rig. Name one of: {0}.",
	"import.noMarkHere":  "The mark is blank.",
	"import.sameMark":    "The mark {0} stands in several lines: {1}.",
	"import.jobMark":     "Several piles of the job have the mark {0}.",
	"import.founding":    "The founding level, {0}, must be below the platform level, {1}.",
	"import.cutoff":      "The cut-off level, {1}, must be above the founding level, {0}.",

	"import.mangled": "“{0}” looks like a date, a number or an error that a spreadsheet made of a mark. Compare it with the drawing.",
	"import.near":    "The job has a pile {1}, which differs from {0} in capitals only.",

	"import.new": "new", "import.changed": "changed", "import.unchanged": "as it is", "import.refused": "not taken",
	"import.says":   "New: {0}. Changed: {1}. As they are: {2}. Not taken: {3}.",
	"import.nobody": "Nothing can be taken from this table.",
	"import.line":   "Line {0}",

	"export.surveyed": "surveyed", "export.expected": "expected", "export.contested": "two values",
	"export.head": "Head", "export.calibration": "Calibration", "export.level": "Head level", "export.toDo": "What to do", "export.window": "Window",
	"export.joints": "Joints",

	"export.unit": "{0} [{1}]",

	"cutting.title": "Cutting list: {0}", "cutting.untitled": "Cutting list", "cutting.line": "{0}: {1}",
	"cutting.to cut": "cut {0} from the head, saw at {1}", "cutting.at saw level": "nothing to saw",
	"cutting.bars short": "do not saw, bars short by {0}", "cutting.build up": "head too low, break back and build up {0}",
	"cutting.build up.unknown": "head too low, a build-up is needed; its height is not known",
	"cutting.not known":        "not known",
	"cutting.expected":         "expected: {0}; survey the head first",
	"cutting.unknown":          "Not known yet: {0}.",
	"cutting.none":             "No head is known yet.",

	"header.piles.mark":         "mark; pile; pile mark; pile no; pile nr; pile number; pile id; pile ref; pile reference; pile name; no; nr; number; id; ref; reference",
	"header.piles.type":         "type; pile type; section; pile section; size; pile size",
	"header.piles.rig":          "rig; machine; pressing rig",
	"header.piles.circuit":      "circuit; jack circuit",
	"header.piles.criterion":    "criterion; set criterion; pressing criterion",
	"header.piles.group":        "group; pile group; cap; pile cap",
	"header.piles.rank":         "order; sequence; order of pressing; pressing order; pressing sequence",
	"header.piles.workingLoad":  "working load; load; pile load; service load; safe working load; swl; working load per pile; load per pile",
	"header.piles.designAction": "design action; design load; factored load; ultimate load",
	"header.piles.drag":         "drag load; long term drag load; downdrag; drag",
	"header.piles.dugAway":      "dug away",
	"header.piles.settling":     "settling",
	"header.piles.platform":     "platform level; platform; working platform; working platform level; piling platform; piling platform level; pressing platform level",
	"header.piles.founding":     "founding level; founding; toe level; toe; pile toe; pile toe level; design toe level; tip level; pile tip level; base level; pile base level",
	"header.piles.cutoff":       "cut off level; cut off; cutoff level; cutoff; pile cut off level; pile cut off; pile cutoff level; col",
	"header.piles.expectedToe":  "expected toe level; expected toe; anticipated toe level",
	"header.piles.leastToe":     "least toe level; minimum toe level; min toe level; shallowest toe level",
	"header.piles.east":         "east; easting; eastings",
	"header.piles.north":        "north; northing; northings",
	"header.piles.rake":         "rake; batter",
	"header.piles.follower":     "follower; follower used",
	"header.piles.stickUp":      "stick up; highest head above platform",
	"header.piles.softDepth":    "soft depth; very soft depth; depth of soft ground",
	"header.piles.preBored":     "pre bored; prebored; pre bore; prebore; pre bored depth; prebored depth; pre bore depth; prebore depth",
	"header.piles.note":         "note; notes; remark; remarks; comment; comments",
}
