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
	"runtime/debug"
	"strings"
	"syscall"

	"noonbook/build/form"
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

  noonbook press [FOLDER]   write the handbook
  noonbook desk [FOLDER]    show the handbook here and press again as you save
  noonbook proof [FOLDER]   read everything, report every problem, write nothing
  noonbook reckon NAME …    evaluate one placeholder here
  noonbook starter FOLDER   lay out a new unit to edit

  noonbook help VERB        say more about a verb, as noonbook VERB --help does
  noonbook --version        say which noonbook this is

A date in a lesson or on the command line is one such as 2027-04-20, or a day by
name such as "next full Moon", which is right in the next term too.

Without a verb, in a folder that holds unit.toml or content/unit.toml, noonbook
presses the handbook and shows it at the desk: a double click on the program in such
a folder is enough. In a folder without a unit it opens a page to fill in, and makes
the unit.
`

// A verb is one thing that the command does.
type verb struct {
	name string
	help string
	do   func(ctx context.Context, args []string, out, errs io.Writer) error
}

func verbs() []verb {
	return []verb{
		{"press", pressHelp, press},
		{"desk", deskHelp, atDesk},
		{"proof", proofHelp, proof},
		{"reckon", reckonHelp, reckon},
		{"starter", starterHelp, starter},
	}
}

// verbNamed finds a verb, or says which are near.
func verbNamed(name string) (verb, error) {
	var names []string
	for _, v := range verbs() {
		if v.name == name {
			return v, nil
		}
		names = append(names, v.name)
	}
	hint := form.Meant(name, append(names, "help", "--help", "--version"))
	if hint == "" {
		hint = "; they are press, desk, proof, reckon and starter"
	}
	return verb{}, usage{fmt.Errorf("%q is not a verb%s", name, hint)}
}

// A usage error is one of the command line.
type usage struct{ error }

func main() {
	collectRarely()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	code := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	if len(os.Args) == 1 && code != done && ownWindow() {
		pause(os.Stdin, os.Stdout)
	}
	os.Exit(code)
}

// collectRarely lets a press, which lasts a moment and keeps most of what it makes, collect
// garbage when there are four times as many bytes as are in use, which saves it a seventh of
// its work, and as often as ever where a unit is so large that this would fill the machine.
func collectRarely() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(400)
		if os.Getenv("GOMEMLIMIT") == "" {
			debug.SetMemoryLimit(384 << 20)
		}
	}
}

// run is the whole command; it returns the exit code.
func run(ctx context.Context, args []string, out, errs io.Writer) int {
	if len(args) == 0 {
		at, ok := here()
		switch {
		case ok && attended():
			return exitCode(homecomer(ctx, at, show, out, errs), errs)
		case ok:
			return exitCode(alone(ctx, at, show, out, errs), errs)
		case attended():
			folder, err := newHome()
			if err == nil {
				err = newcomer(ctx, folder, show, out, errs)
			}
			return exitCode(err, errs)
		}
		fmt.Fprint(errs, help)
		return wrongUse
	}
	switch args[0] {
	case "--help", "-h", "help":
		return exitCode(explain(args[1:], out), errs)
	case "--version":
		fmt.Fprintln(out, version(debug.ReadBuildInfo()))
		return done
	}
	verb, err := verbNamed(args[0])
	if err != nil {
		return exitCode(err, errs)
	}
	return exitCode(verb.do(ctx, args[1:], out, errs), errs)
}

// explain prints the help, or that of the verb that is named.
func explain(words []string, out io.Writer) error {
	if len(words) == 0 {
		fmt.Fprint(out, help)
		return nil
	}
	if len(words) > 1 {
		return usage{fmt.Errorf("help: %q is too much; it is about one verb", words[1])}
	}
	verb, err := verbNamed(words[0])
	if err != nil {
		return err
	}
	fmt.Fprint(out, verb.help)
	return nil
}

func exitCode(err error, errs io.Writer) int {
	var problems problem.List
	var wrong usage
	switch {
	case err == nil, errors.Is(err, flag.ErrHelp):
		return done
	case errors.Is(err, errTold):
		return contentFault
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
			return nil, usage{fmt.Errorf("%s: %w%s noonbook %s --help says more", flags.Name(), err, meantFlag(flags, err), flags.Name())}
		}
		if flags.NArg() == 0 {
			return words, nil
		}
		words = append(words, flags.Arg(0))
		args = flags.Args()[1:]
	}
}

// given reports whether the words of the command have a flag.
func given(flags *flag.FlagSet, name string) (found bool) {
	flags.Visit(func(f *flag.Flag) { found = found || f.Name == name })
	return found
}

// meantFlag names the flag that is nearest to the one that an error of parsing found
// unknown, and ends that sentence.
func meantFlag(flags *flag.FlagSet, err error) string {
	_, name, unknown := strings.Cut(err.Error(), "flag provided but not defined: -")
	names := []string{"--help"}
	flags.VisitAll(func(f *flag.Flag) { names = append(names, "--"+f.Name) })
	if hint := form.Meant("--"+name, names); unknown && hint != "" {
		return hint
	}
	return ";"
}
