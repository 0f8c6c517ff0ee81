package segment

import (
	"strconv"
	"strings"
)

// InputError says why a length cannot be computed or a make-up cannot be found.
//
// The codes, and what the numbers are:
//
//	segment.notFinite       Symbol, Value: a level or length that is no finite number [m]
//	segment.negative        Symbol, Value: a length that may not be below zero [m]
//	segment.tooLong         Symbol, Value, Limit: more than the product handles [m]
//	segment.need            Value: the needed length is zero or negative [m]
//	segment.stockEmpty      no piece of the stock is available
//	segment.stockTooMany    Value, Limit: lines of stock, and how many are handled
//	segment.pieceLength     Line, Value, Limit: a piece not above zero or above the longest [m]
//	segment.pieceCount      Line, Value: a count below zero that is not [Unlimited]
//	segment.extra           Line, Value, Limit: an extra cost below zero or above the highest [m]
//	segment.jointPrice      Value, Limit: a price below zero or above the highest [m]
//	segment.maxPieces       Value, Limit: a limit on pieces outside 1 to 40
//	segment.stockShort      Value, Limit: the need, and the longest reachable with all pieces [m]
//	segment.tooManyPieces   Value, Limit: the fewest pieces that reach the need, and how many are allowed
//	segment.role            Line, Value, Limit: a role that is none of the list
//	segment.stratum         Value, Limit: a top of a stratum below its bottom [m]
//	segment.order.tooMany   Value, Limit: piles, and how many an order list takes
//	segment.order.spares    Value, Limit: a share of spares outside 0 to 100 [%]
//	segment.order.beside    Value, Limit: a neighbour that is no other pile of the list
//	segment.stopped.*       Stops: the rules that leave no make-up; Value, Limit: total length and
//	                        off-cut of the best without the first of them [m]; Line: its stratum
//	segment.effort          the best make-up was not proven within the effort allowed
type InputError struct {
	Code   string
	Symbol string  // of a level or length, as in the rule: "h_g"
	Line   int     // of the stock, from 0; -1 where none is meant
	Value  float64 // what was given or needed
	Limit  float64 // what is allowed or reachable
	Stops  []Stop
}

// Error gives an English sentence for logs and tests; screens word the code.
func (e *InputError) Error() string {
	value := strconv.FormatFloat(e.Value, 'f', -1, 64)
	limit := strconv.FormatFloat(e.Limit, 'f', -1, 64)
	line := "stock line " + strconv.Itoa(e.Line+1)
	if strings.HasPrefix(e.Code, "segment.stopped.") {
		return "no make-up keeps " + kept[strings.TrimPrefix(e.Code, "segment.stopped.")] + "; without that the best is " +
			value + " m long and leaves " + limit + " m"
	}
	switch e.Code {
	case "segment.notFinite":
		return e.Symbol + " is not a finite number; for example 12.60 m"
	case "segment.negative":
		return e.Symbol + " = " + value + " m is negative, at least 0 m is allowed; for example 0.60 m"
	case "segment.tooLong":
		return e.Symbol + " = " + value + " m is outside -" + limit + " m to " + limit + " m; for example 12.60 m"
	case "segment.need":
		return "the needed length is " + value + " m: the head must end above the toe"
	case "segment.stockEmpty":
		return "no piece of the stock is available; give at least one length, for example 12 m"
	case "segment.stockTooMany":
		return "the stock has " + value + " lines, at most " + limit + " are handled"
	case "segment.pieceLength":
		return line + ": a piece of " + value + " m; more than 0 and at most " + limit + " m is allowed; for example 12 m"
	case "segment.pieceCount":
		return line + ": a count of " + value + "; 0 or more is allowed, or unlimited"
	case "segment.extra":
		return line + ": an extra cost of " + value + " m; 0 to " + limit + " m of pile is allowed"
	case "segment.role":
		return line + ": role " + value + " is not known; 0 to " + limit + " is allowed"
	case "segment.stratum":
		return "a stratum has its top at " + value + " m, below its bottom at " + limit + " m"
	case "segment.order.tooMany":
		return value + " piles; an order list takes " + limit
	case "segment.order.spares":
		return value + " % of spares; 0 to " + limit + " % is allowed"
	case "segment.order.beside":
		return "a pile stands beside number " + value + ", which is not another of 0 to " + limit
	case "segment.jointPrice":
		return "a joint priced at " + value + " m; 0 to " + limit + " m of pile is allowed; for example 1 m"
	case "segment.maxPieces":
		return "a limit of " + value + " pieces; 1 to " + limit + " is allowed"
	case "segment.stockShort":
		return "the pile needs " + value + " m, all available pieces together reach " + limit + " m"
	case "segment.tooManyPieces":
		return "the pile needs at least " + value + " pieces of this stock, " + limit + " are allowed"
	}
	return "the best make-up was not proven within the effort allowed; use fewer different lengths"
}

// kept names the rules for [InputError.Error].
var kept = map[string]string{
	"clear": "the distance of joints from cut-off", "last": "the least length of the last piece below cut-off",
	"bars": "joints out of the bars above cut-off", "noJoint": "joints out of the strata named for joints",
	"noStop": "the toe out of the strata named for stops", "stagger": "the distance from joints of neighbouring piles",
	"most": "the limit on pieces", "roles": "the places of starters, middle pieces and tops", "several": "all rules at once",
}

func fault(code string) *InputError { return &InputError{Code: code, Line: -1} }
