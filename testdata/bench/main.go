// Command bench holds what a press takes beside other work of the same run, prints a table
// and bars, and fails where something takes twice what it must.
//
//	go run ./testdata/bench
//	go run ./testdata/bench --schools 1000 --lessons 1000    as the goals are stated; some minutes
//
// It is run from the project's folder. Its README.md says what each line measures and how.
package main

import (
	"errors"
	"flag"
	"fmt"
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"time"
)

// Where the frozen unit lies, and how large the two districts and units are that are compared.
const unitFolder = "testdata/bench/unit"

// A bench is the folder and the programs of one run.
type bench struct {
	dir      string // for what is written where processor time counts
	memory   string // for what is timed on the clock: in memory, where the system has that
	noonbook string
	bare     string
	schools  int // of the larger district
	lessons  int // of the larger unit
	rounds   int // of each pair of sides
}

func main() {
	log.SetFlags(0)
	log.SetPrefix("bench: ")
	schools := flag.Int("schools", 100, "schools of the larger district; the smaller has a tenth")
	lessons := flag.Int("lessons", 100, "lessons of the larger unit; the smaller has a tenth")
	only := flag.String("only", "", "measure the lines whose names hold these words")
	rounds := flag.Int("rounds", 10, "of the work whose least time counts")
	flag.Parse()
	debug.SetGCPercent(400) // as the command does
	b, err := prepare(*schools, *lessons, *rounds)
	if err != nil {
		log.Fatal(err)
	}
	begin := time.Now()
	slow := run(os.Stdout, b, worksNamed(*only))
	fmt.Printf("\n%s, %s/%s, %d processors, %.0f s\n", runtime.Version(), runtime.GOOS, runtime.GOARCH, runtime.NumCPU(), time.Since(begin).Seconds())
	if err := errors.Join(os.RemoveAll(b.dir), os.RemoveAll(b.memory)); err != nil {
		log.Print(err)
	}
	if slow > 0 {
		log.Fatalf("%d of them are past their limit, or could not be measured", slow)
	}
}

// prepare builds the programs.
func prepare(schools, lessons, rounds int) (*bench, error) {
	if schools < 100 || lessons < 100 || rounds < 2 {
		return nil, fmt.Errorf("at least 100 schools, 100 lessons and 2 rounds are needed")
	}
	dir, err := os.MkdirTemp("", "noonbook-bench-")
	if err != nil {
		return nil, err
	}
	memory := dir
	if info, err := os.Stat("/dev/shm"); err == nil && info.IsDir() {
		if memory, err = os.MkdirTemp("/dev/shm", "noonbook-bench-"); err != nil {
			return nil, err
		}
	}
	b := &bench{dir: dir, memory: memory, noonbook: filepath.Join(dir, "noonbook.exe"), bare: filepath.Join(dir, "bare.exe"), schools: schools, lessons: lessons, rounds: rounds}
	for program, source := range map[string]string{b.noonbook: "./cmd/noonbook", b.bare: "./testdata/bench/bare"} {
		build := exec.Command("go", "build", "-o", program, source)
		build.Stderr = os.Stderr
		if err := build.Run(); err != nil {
			return nil, fmt.Errorf("building %s, in the project's folder: %w", source, err)
		}
	}
	return b, nil
}

// fresh returns the name of something new in the bench's folder, or that in memory.
func fresh(folder, name string) string {
	dir, err := os.MkdirTemp(folder, name+"-")
	if err != nil {
		log.Fatal(err)
	}
	return filepath.Join(dir, name)
}
