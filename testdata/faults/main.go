// Faults puts one-line faults into noonbook, one at a time, and sees whether a
// test notices. See README.md.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"time"
)

const (
	fewest = 150  // faults that the list must hold
	wanted = 0.90 // part of them that tests must catch
)

// abreast is how many faults are tried at once: one a processor of a small machine.
const abreast = 2

func main() {
	check := flag.Bool("check", false, "see only that every fault still applies and compiles; no test is run")
	root := flag.String("root", filepath.Join("..", ".."), "the folder of noonbook's go.mod")
	flag.Usage = func() {
		fmt.Fprint(flag.CommandLine.Output(), "usage: go run . [-check] [-root FOLDER] [ID or path prefix ...]\n\n")
		flag.PrintDefaults()
	}
	flag.Parse()

	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if err := try(ctx, *root, *check, flag.Args()); err != nil {
		stop()
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// try does what the command line asks for. Its error says why the run fails.
func try(ctx context.Context, root string, check bool, chosen []string) error {
	root, err := filepath.Abs(root)
	if err != nil {
		return err
	}
	if err := boundMemory(); err != nil {
		return err
	}
	faults, err := readFaults("faults.txt")
	if err != nil {
		return err
	}
	reasons, err := readSurvivors("survivors.txt", faults)
	if err != nil {
		return err
	}
	if len(faults) < fewest {
		return fmt.Errorf("faults.txt has %d faults, and at least %d are wanted", len(faults), fewest)
	}
	house, err := openHouse(ctx, root)
	if err != nil {
		return err
	}
	defer house.close()

	all := len(chosen) == 0
	if !all {
		if faults = choose(faults, chosen); len(faults) == 0 {
			return fmt.Errorf("no fault has an id or a file that begins with %s", strings.Join(chosen, " or "))
		}
	}
	began := time.Now()
	if err := house.checkAll(ctx, faults, all); err != nil {
		return err
	}
	fmt.Printf("%d faults apply and compile (%s)\n", len(faults), since(began))
	if check {
		return nil
	}
	if err := house.measure(ctx); err != nil {
		return err
	}
	results, err := house.run(ctx, faults)
	if err != nil {
		return err
	}
	return score(results, reasons, all, since(began))
}

// choose returns the faults whose id or file begins with one of the words.
func choose(faults []Fault, words []string) []Fault {
	var some []Fault
	for _, f := range faults {
		for _, w := range words {
			if strings.HasPrefix(f.ID, w) || strings.HasPrefix(f.File, w) {
				some = append(some, f)
				break
			}
		}
	}
	return some
}

func since(t time.Time) time.Duration { return time.Since(t).Round(time.Second) }
