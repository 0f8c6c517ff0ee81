// Command stdio is the native shell: a verb as argument, bytes on stdin,
// an answer on stdout.
//
//	go run ./wasm/stdio assess < examples/quay-shed.json   every pile's answer as JSON
//	go run ./wasm/stdio format < job.json                  the job in the layout of files
//	go run ./wasm/stdio labels                             the labels of the page as JSON
//
// Problems go to stderr, one a line; the status is 1 when the file is bad and
// 2 when the command is.
package main

import (
	"io"
	"os"

	"gaugewright/calc/desk"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, problems io.Writer) int {
	if len(args) != 1 {
		io.WriteString(problems, "usage: stdio assess|format|labels, with a job file on stdin\n")
		return 2
	}
	if args[0] == "labels" {
		return write(out, problems, desk.Labels())
	}
	data, err := io.ReadAll(in)
	if err != nil {
		io.WriteString(problems, "stdin cannot be read: "+err.Error()+"\n")
		return 2
	}
	switch args[0] {
	case "assess":
		text, complaints := desk.Assess(data)
		if len(complaints) > 0 {
			return refuse(problems, complaints)
		}
		return write(out, problems, text)
	case "format":
		text, complaints := desk.Format(data)
		if len(complaints) > 0 {
			return refuse(problems, complaints)
		}
		return write(out, problems, text)
	}
	io.WriteString(problems, "there is no verb "+args[0]+"; allowed: assess, format, labels\n")
	return 2
}

func refuse(problems io.Writer, complaints []string) int {
	for _, c := range complaints {
		io.WriteString(problems, c+"\n")
	}
	return 1
}

func write(out, problems io.Writer, text []byte) int {
	if _, err := out.Write(text); err != nil {
		io.WriteString(problems, "the answer cannot be written: "+err.Error()+"\n")
		return 2
	}
	return 0
}
