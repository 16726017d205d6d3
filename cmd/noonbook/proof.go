package main

import (
	"context"
	"flag"
	"io"

	"noonbook/build/placeholder/entry"
	"noonbook/build/plan"
	"noonbook/build/source"
)

const proofHelp = `noonbook proof reads everything, reports every problem and writes nothing.

  noonbook proof [FOLDER] [--schools LIST]

Without a folder it reads ./content, or this folder where it holds unit.toml, or
else the demo unit.

  --content FOLDER   read this folder, another way to name it
  --schools LIST     check the rows of a list of schools beside unit.toml instead, and
                     no lesson; noonbook press --help says what a list is

Problems read file:line:column: what was found, what is allowed. Warnings say
where the plan and the sky disagree, such as a dial lesson with the Sun too low, and
what will not travel to the next term, such as a date typed outside this one.
Exit 0: no problem; 1: problems; 2: wrong use; 3: the machine failed.
`

func proof(_ context.Context, args []string, out, errs io.Writer) error {
	flags := flag.NewFlagSet("proof", flag.ContinueOnError)
	flagged := flags.String("content", "", "")
	schools := flags.String("schools", "", "")
	words, err := parse(flags, args, out, errs, proofHelp)
	if err != nil {
		return err
	}
	folder, err := oneFolder("proof", *flagged, words)
	if err != nil {
		return err
	}
	noteDemo(errs, folder)
	if given(flags, "schools") {
		return proofDistrict(folder, *schools, out)
	}
	watch := progressOn(errs)
	known := &entry.Known{}
	unit, problems, err := readHere(folder, new(source.Memory), known)
	if err != nil {
		return err
	}
	_, _, found, err := pressed(unit, plan.Staff, nil, known, watch) // it holds all that the class edition does
	if err != nil {
		return err
	}
	watch.end()
	problems = append(problems, found...).Sorted()
	if problems.Faults() > 0 {
		return problems
	}
	tellGone(out, unit)
	report(out, problems)
	return nil
}
