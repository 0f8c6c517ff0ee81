// Command report prints the test report from the file that the checks of
// package published wrote. `make report` runs both.
package main

import (
	"fmt"
	"os"

	"gaugewright/calc/published"
)

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(arguments []string) error {
	if len(arguments) != 1 {
		return fmt.Errorf("usage: report FILE, which tests wrote with %s=FILE", published.FileVariable)
	}
	file, err := os.Open(arguments[0])
	if err != nil {
		return err
	}
	defer file.Close()
	lines, err := published.ReadLines(file)
	if err != nil {
		return err
	}
	published.Print(os.Stdout, lines)
	for _, l := range lines {
		if !l.OK {
			return fmt.Errorf("some checks are not ok")
		}
	}
	return nil
}
