package words

// complaints are what is said of texts and files that cannot be read. {0} is
// what was found, {1} what is allowed, {2} an example.
var complaints = map[string]string{
	"typed.number":     "“{0}” is not a number. Write digits, and a point or a comma for decimals: {2}.",
	"typed.separator":  "Is the comma in {0} a decimal sign or does it part thousands? This is asked once for the job.",
	"typed.mixed":      "{0} can be read in two ways. Choose one.",
	"typed.ton":        "“{0}” alone may be three different units. Choose one.",
	"typed.unit":       "“{0}” is not a unit of the list: {1}. Example: {2}.",
	"typed.dimension":  "“{0}” is not a unit for this. Allowed: {1}. Example: {2}.",
	"typed.range":      "{0} is outside what is allowed here: {1}.",
	"typed.choice":     "“{0}” is not one of: {1}.",
	"typed.count":      "“{0}” is not a whole number. Allowed: {1}.",
	"typed.rod":        "The rod, {0}, must be {1}.",
	"typed.efficiency": "The efficiency for the set, {0}, must be {1}.",
	"offer.decimal":    "{0} (decimal comma)", "offer.thousands": "{0} (comma parts thousands)", "offer.plain": "{0}",

	"json.size": "The file is too large: {0}; allowed is {1}.", "json.empty": "The file is empty. Allowed is a job file.",
	"json.utf8": "The text is not UTF-8 here: {0}. Save the file as UTF-8.", "json.syntax": "The file is damaged here: found {0}, allowed is {1}.",
	"json.truncated": "The file ends too early: {0}; expected {1}. Ask for it again.", "json.kind": "This is no job file: {0}; allowed is {1}.",
	"json.depth": "The file is nested too deep: {0}; allowed are {1}.", "json.duplicate": "A name stands twice: {0}; {1}.",
	"json.case":     "Two names differ only in capitals: {0}; {1}.",
	"json.trailing": "Something follows the end of the job: {0}; {1}.", "json.number": "Not a number as job files write it: {0}; allowed is {1}.",

	"job.format": "This is no job file of this product: found {0}, allowed is {1}.", "job.schema": "The version is {0}; allowed is {1}.",
	"job.id": "The job has no id: found {0}, allowed is {1}.", "job.kind": "Found {0}; allowed is {1}.",
	"job.quantity": "{0} is not a quantity for this place. Allowed units: {1}. Example: {2}.",
	"job.range":    "{0} is outside what is allowed: {1}.", "job.choice": "{0} is not one of: {1}.",
	"job.reference": "{0} names nothing in the file; allowed is {1}.", "job.count": "{0} is not a whole number; allowed is {1}.",
	"job.rod": "The rod, {0}, must be {1}.", "job.efficiency": "The efficiency for the set, {0}, must be {1}.",
	"job.record":     "{0} is not a line of this record; allowed is {1}. Example: {2}.",
	"job.entry":      "An entry of the history cannot be read: {0}.",
	"complaint.more": "and {0} more", "complaint.at": "Line {0}, at {1}", "complaint.where": "At {1}", "complaint.example": "Example: {0}.",

	"desk.request": "The request cannot be read.", "desk.verb": "There is no verb “{0}”. Allowed: open, enter, show, save, close.",
	"desk.document": "The document “{0}” is not open.", "desk.view": "There is no view “{0}”.", "desk.path": "There is no field at “{0}”.",
	"desk.readOnly": "This file was written by a newer version. It can be looked at and saved, not edited.",
	"desk.fault":    "The calculation stopped at this request. Nothing entered before is lost.",
	"desk.do":       "There is no entry of the kind “{0}”.", "desk.ids": "The request brings no ids for what it adds.",
	"desk.parcel": "What was to be copied cannot be read.", "desk.missing": "“{0}” is not in the job any more.",
	"desk.waiver": "A waiver needs a name and a reason.",
}
