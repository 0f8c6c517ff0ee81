package job

// jobFields describe the job as a whole. The names on the record follow the
// list of what a record of displacement piles holds (EN 12699, section 10,
// from memory).
var jobFields = []Field{
	words("/title"), words("/datum"), choice("/decimalSign", ".", ","),
	length("/jointPrice", 0, 100),
	words("/site"), words("/client"), words("/contractor"), words("/designer"), words("/contract"),
	words("/currency"), // of all costs
	// The order list: spares beyond what the piles take, and whether off-cuts are
	// used again, how long at least and what is lost of each.
	ratio("/order/spares", "%", 0, 1, false), yesNo("/order/reuse"), length("/order/least", 0, 60), length("/order/loss", 0, 5),
	yesNo("/guard"), // readings keep the uncertainty away from load and limit
}

// groupFields describe caps: piles that carry one load together.
var groupFields = join([]Field{
	words("/groups/*/name"),
	force("/groups/*/load", true),
	moment("/groups/*/momentEast"), moment("/groups/*/momentNorth"),
	length("/groups/*/loadEast", -anyPlace, anyPlace), length("/groups/*/loadNorth", -anyPlace, anyPlace),
	ratio("/groups/*/share", "%", 0.5, 2, false), // of a pile's load that is allowed
}, struck("/groups/*"))

// stratumFields describe layers of the ground in which a joint, or the toe
// while a splice is made, is not wanted.
var stratumFields = join([]Field{
	words("/strata/*/name"), level("/strata/*/top"), level("/strata/*/bottom"),
	yesNo("/strata/*/noJoint"), yesNo("/strata/*/noStop"), yesNo("/strata/*/soft"),
}, struck("/strata/*"))
