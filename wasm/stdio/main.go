// Command stdio is the native shell: a verb as argument, a job file on stdin, an
// answer on stdout. What else a verb takes is named behind it:
//
//	stdio assess [DAY] < job.json       every pile's answer as JSON, as of a day, today where none is given
//	stdio format < job.json             the job in the layout of files
//	stdio join OTHER < job.json         both copies of a job in one file; on stderr, in words, what
//	                                    came, which fields have two values, and what is wrong
//	stdio history [PATH] < job.json     who stated what, the latest first, as JSON; a path of the
//	                                    file, such as /now/piles/<id>/cutoff, asks for one thing or value
//	stdio compare OTHER < job.json      the fields that two files state differently, as JSON; they
//	                                    need not have a sitting in common, nor be of one job
//	stdio compare FROM TO < job.json    the fields that differ between two times, as JSON: moments or
//	                                    days in UTC, or "now" for TO
//	stdio labels [late]                 the labels of the page as JSON: those it brings along, or those
//	                                    it asks a running core for
//
// OTHER is the name of a file. Nothing is written but to stdout and stderr, and
// it does not matter which of two copies is joined to which.
//
// Problems go to stderr, one a line; the status is 1 when a file is bad or does
// not hold what was asked for, and 2 when the command is wrong. What the fields of
// the answers mean: go doc ./calc/desk Assess, Copy.History, Copy.Compare.
package main

import (
	"io"
	"os"
	"slices"
	"time"

	"gaugewright/calc/desk"
)

// The statuses.
const (
	done = iota
	badFile
	badCommand
)

const usage = `usage:
  stdio assess [DAY] < job.json
  stdio format < job.json
  stdio join OTHER < job.json
  stdio history [PATH] < job.json
  stdio compare OTHER < job.json
  stdio compare FROM TO < job.json
  stdio labels [late]
`

// counts is how many arguments a verb takes.
var counts = map[string][]int{"assess": {0, 1}, "format": {0}, "join": {1}, "history": {0, 1}, "compare": {1, 2}, "labels": {0, 1}}

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, problems io.Writer) int {
	s := shell{out, problems}
	if len(args) == 0 || !slices.Contains(counts[args[0]], len(args)-1) {
		return s.refuse(badCommand, usage)
	}
	verb, args := args[0], args[1:]
	if verb == "labels" {
		return s.answer(desk.Labels(len(args) == 1), nil)
	}
	data, err := io.ReadAll(in)
	if err != nil {
		return s.refuse(badCommand, "stdin cannot be read: "+err.Error()+"\n")
	}
	switch {
	case verb == "assess":
		return s.assess(data, args)
	case verb == "format":
		return s.answer(desk.Format(data))
	case verb == "history":
		return s.history(data, args)
	case len(args) == 2:
		return s.between(data, args[0], args[1])
	}
	return s.both(verb, data, args[0])
}

// shell is where an answer goes.
type shell struct{ out, problems io.Writer }

// answer writes what a verb gave: an answer, or complaints about a file.
func (s shell) answer(text []byte, complaints []string) int {
	if len(complaints) > 0 {
		s.say("", complaints)
		return badFile
	}
	if _, err := s.out.Write(text); err != nil {
		return s.refuse(badCommand, "the answer cannot be written: "+err.Error()+"\n")
	}
	return done
}

// assess answers as of a day, today by the machine's clock where none is given.
func (s shell) assess(data []byte, args []string) int {
	day := time.Now().Format(time.DateOnly)
	if len(args) == 1 {
		if _, err := time.Parse(time.DateOnly, args[0]); err != nil {
			return s.refuse(badCommand, "the day is written like 2026-11-03\n")
		}
		day = args[0]
	}
	return s.answer(desk.Assess(data, day))
}

func (s shell) refuse(status int, says string) int {
	io.WriteString(s.problems, says)
	return status
}

func (s shell) say(before string, sentences []string) {
	for _, one := range sentences {
		io.WriteString(s.problems, before+one+"\n")
	}
}

func (s shell) history(data []byte, args []string) int {
	c, complaints := desk.ReadCopy(data)
	if complaints != nil {
		return s.answer(nil, complaints)
	}
	path := ""
	if len(args) > 0 {
		path = args[0]
	}
	return s.answer(c.History(path))
}

func (s shell) between(data []byte, from, to string) int {
	c, complaints := desk.ReadCopy(data)
	if complaints != nil {
		return s.answer(nil, complaints)
	}
	if to == "now" {
		to = ""
	}
	text, complaints := c.Between(from, to)
	if complaints != nil {
		s.say("", complaints)
		return badCommand
	}
	return s.answer(text, nil)
}

// both joins or compares two files, and tells the complaints about either.
func (s shell) both(verb string, data []byte, name string) int {
	otherData, err := os.ReadFile(name)
	if err != nil {
		return s.refuse(badCommand, err.Error()+"\n")
	}
	c, complaints := desk.ReadCopy(data)
	s.say("stdin: ", complaints)
	other, more := desk.ReadCopy(otherData)
	s.say(name+": ", more)
	if c == nil || other == nil {
		return badFile
	}
	if verb == "compare" {
		return s.answer(c.Compare(other), nil)
	}
	joined, says, complaints := c.Join(other)
	s.say("", says)
	return s.answer(joined, complaints)
}
