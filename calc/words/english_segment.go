package words

// segmentRules are the words for joints and for the order list of a job. Of what
// stops every make-up, {0} is the length and {1} the off-cut of the best make-up
// without that rule.
var segmentRules = map[string]string{
	"symbol.jointLevel": "level of the joint", "symbol.spliceLevel": "level at which a splice is made", "symbol.spliceHeight": "height of the splice above platform",
	"symbol.stopToe": "level of the toe while the splice is made", "symbol.stratumTop": "top of the stratum", "symbol.stratumBottom": "bottom of the stratum",
	"symbol.jointClear": "least distance of a joint from cut-off", "symbol.lastLeast": "least length of the last piece below cut-off",
	"symbol.neighbourJoint": "joint of a neighbouring pile", "symbol.jointStagger": "least distance from joints of neighbouring piles",
	"symbol.mostJoints": "most joints in a pile", "symbol.deeper": "founding level deeper by",

	"rule.segment.decide": "Level of the toe when the head passes the level of splices", "rule.segment.toeLeft": "What is left to press then",
	"rule.segment.stickUp":     "Height of the head above platform at the end",
	"rule.segment.joint.level": "Level of the joint", "rule.segment.joint.stopToe": "Level of the toe while the splice is made",
	"rule.segment.joint.spliceLevel": "Level at which splices are made", "rule.segment.joint.clear": "The joint keeps its distance from cut-off",
	"rule.segment.joint.last": "The last piece keeps its least length below cut-off", "rule.segment.joint.belowBars": "The joint lies below the bars",
	"rule.segment.joint.aboveBars": "The joint lies above the bars that are left standing", "rule.segment.joint.noJoint": "The joint lies outside the stratum",
	"rule.segment.joint.noStop": "The toe is outside the stratum while the splice is made", "rule.segment.joint.stagger": "The joint keeps its distance from the neighbour's",
	"rule.segment.joint.most": "The joints are not more than stated", "rule.segment.shift": "Needed length with the founding level moved",

	"symbol.jobCost": "cost of all make-ups, in metres of pile", "symbol.jobBound": "what the cost cannot come below", "symbol.piecesTaken": "pieces that the piles take",
	"symbol.spares": "share of spares", "symbol.piecesInStock": "pieces in stock", "symbol.jobOffCut": "off-cuts of all piles", "symbol.jobJoints": "joints of all piles",
	"symbol.jobExtra": "extra costs of all pieces", "symbol.sawHeight": "saw cut above the toe", "symbol.lastPiece": "length of the last piece",
	"symbol.offCutLoss": "lost at the saw and for a sound end",

	"rule.segment.order.ordered": "Pieces to order", "rule.segment.order.missing": "Pieces that are missing", "rule.segment.order.cost": "Cost of all make-ups, in metres of pile",
	"rule.segment.order.gap": "How far the cost may lie above the least", "rule.segment.order.boundHolds": "The cost is not below the bound",
	"rule.segment.order.offCutKept": "Off-cut that is used again",

	"segment.order.tooMany": "There are {0} piles; an order list takes {1}.",
	"segment.order.spares":  "Spares of {0} % are outside what is handled, 0 to {1} %.",
	"segment.order.beside":  "A pile is said to stand beside number {0}, which is not another pile of the list.",
	"segment.order.missing": "The stock is short of {0} pieces: {1}.",
	"segment.order.lacking": "No order from this stock alone exists.",
	"segment.order.fewer":   "No order from this stock alone was found; it is not proven that there is none.",
	"segment.order.proven":  "No cheaper order of this stock exists.",
	"segment.order.gap":     "No order of this stock can be cheaper by more than {0}.",
	"segment.order.close":   "Joints too near those of a neighbouring pile, with every make-up of what is left: {0}.",

	"segment.stopped.clear":   "No make-up keeps its joints far enough from cut-off. Without that rule: {0}, off-cut {1}.",
	"segment.stopped.last":    "No make-up keeps enough of its last piece below cut-off. Without that rule: {0}, off-cut {1}.",
	"segment.stopped.bars":    "Every make-up has a joint in the bars that are left standing. Without that rule: {0}, off-cut {1}.",
	"segment.stopped.noJoint": "Every make-up has a joint in a stratum named for joints. Without it: {0}, off-cut {1}.",
	"segment.stopped.noStop":  "Every make-up stops for a splice with the toe in a stratum named for stops. Without it: {0}, off-cut {1}.",
	"segment.stopped.stagger": "No make-up keeps its joints far enough from those of neighbouring piles. Without that rule: {0}, off-cut {1}.",
	"segment.stopped.most":    "No make-up keeps the rules with so few joints. With more: {0}, off-cut {1}.",
	"segment.stopped.roles":   "No make-up has its starters, middle pieces and tops in their places. Without places: {0}, off-cut {1}.",
	"segment.stopped.several": "No make-up keeps all rules together. Without any: {0}, off-cut {1}.",
	"segment.role":            "A place in the pile is outside what is handled.",
	"segment.stratum":         "A stratum has its top, {0}, below its bottom, {1}.",
}
