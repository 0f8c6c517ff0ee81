// Package working shows how a number was made.
//
// A domain package computes with plain Go functions. Beside each function
// stands a [Rule]: the same formula as text, its symbols with their
// dimensions, and where it comes from. When somebody opens a number, the same
// code runs again with a [Book], and every [Put] leaves a [Step]: the rule, the
// values that went in, the value that came out, and on to where each input
// stands. Without a book (nil) nothing is kept and nothing is spent.
//
// The package also holds an evaluator that knows nothing of the Go functions:
// it reads the formula text and computes it from the step's inputs with their
// dimensions ([Evaluate]). Tests hold the two against each other for every
// step of every example.
//
// # The language of formulas
//
// Numbers, symbols, + - * / ^, parentheses, and the functions sqrt abs min max
// sum roundup rounddown if, and the constant pi. roundup(x, d) and
// rounddown(x, d) give a whole number of steps d, with the slack of
// quantity.Slack. A statement joins two formulas by >=, <=, >, < or =, and
// statements by "and"; its value is 1 when it is true and 0 when it is not.
// if(statement, a, b) chooses. What this language cannot say, such as a
// search, is shown as a statement that must be true: a proof by substitution.
package working
