// Command noonbook presses a folder of Markdown lessons and one TOML file about
// a school into an offline handbook whose every number belongs to that school.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"

	"noonbook/build/output"
	"noonbook/build/problem"
)

// Exit codes.
const (
	done         = 0
	contentFault = 1 // problems in the content, nothing written
	wrongUse     = 2 // the command's words are off
	machineFault = 3 // a full disk, a missing permission
)

const help = `noonbook presses lessons and facts about a school into an offline handbook.

  noonbook press            write the handbook
  noonbook desk             show the handbook here and press again as you save
  noonbook proof [FOLDER]   read everything, report every problem, write nothing
  noonbook reckon NAME …    evaluate one placeholder here
  noonbook starter FOLDER   lay out a new unit to edit

noonbook VERB --help says more about each. Without a verb, in a folder that holds
unit.toml or content/unit.toml, noonbook presses the handbook and opens it: a
double click on the program in such a folder is enough.
`

// A usage error is one of the command line.
type usage struct{ error }

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	code := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	if len(os.Args) == 1 && code != done && ownWindow() {
		pause(os.Stdin, os.Stdout)
	}
	os.Exit(code)
}

// run is the whole command; it returns the exit code.
func run(ctx context.Context, args []string, out, errs io.Writer) int {
	verbs := map[string]func(context.Context, []string, io.Writer, io.Writer) error{
		"desk":    atDesk,
		"press":   press,
		"proof":   proof,
		"reckon":  reckon,
		"starter": starter,
	}
	if len(args) == 0 {
		at, ok := here()
		if !ok {
			fmt.Fprint(errs, help)
			return wrongUse
		}
		return exitCode(alone(ctx, at, show, out, errs), errs)
	}
	if args[0] == "--help" || args[0] == "-h" || args[0] == "help" {
		fmt.Fprint(out, help)
		return done
	}
	verb, ok := verbs[args[0]]
	if !ok {
		fmt.Fprintf(errs, "noonbook: %q is not a verb; they are press, desk, proof, reckon and starter\n", args[0])
		return wrongUse
	}
	return exitCode(verb(ctx, args[1:], out, errs), errs)
}

func exitCode(err error, errs io.Writer) int {
	var problems problem.List
	var wrong usage
	switch {
	case err == nil, errors.Is(err, flag.ErrHelp):
		return done
	case errors.As(err, &problems):
		report(errs, problems)
		return contentFault
	case errors.As(err, &wrong), errors.Is(err, output.ErrNotOurs):
		fmt.Fprintln(errs, folded(errs, "noonbook: "+oneLine(err.Error())))
		return wrongUse
	}
	fmt.Fprintln(errs, folded(errs, "noonbook: "+oneLine(err.Error())))
	return machineFault
}

// parse reads the flags of a verb. Flags may stand before and after its other
// words, which it returns.
func parse(flags *flag.FlagSet, args []string, out, errs io.Writer, about string) ([]string, error) {
	flags.SetOutput(io.Discard)
	var words []string
	for {
		if err := flags.Parse(args); err != nil {
			if errors.Is(err, flag.ErrHelp) {
				fmt.Fprint(out, about)
				return nil, err
			}
			return nil, usage{fmt.Errorf("%s: %w; noonbook %s --help says more", flags.Name(), err, flags.Name())}
		}
		if flags.NArg() == 0 {
			return words, nil
		}
		words = append(words, flags.Arg(0))
		args = flags.Args()[1:]
	}
}
