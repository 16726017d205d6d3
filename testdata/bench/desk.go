package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// A whole press took so long when the goal for the desk was set.
const wholePress = 680 * time.Millisecond

func editOfLesson(b *bench) (measured, error) {
	const name = "2-read-the-dial.md"
	return b.edit(name, "read-the-dial.html", func(text []byte, round int) (changed []byte, shown string) {
		const class = "\n# Teach: class\n"
		shown = fmt.Sprintf("Word%dofthebench", round)
		return bytes.Replace(text, []byte(class), []byte(class+"\n"+shown+"\n"), 1), shown
	})
}

func editOfSettings(b *bench) (measured, error) {
	return b.edit("unit.toml", "index.html", func(text []byte, round int) (changed []byte, shown string) {
		shown = fmt.Sprintf("Bench School %d", round)
		return bytes.Replace(text, []byte("Alder Reach School"), []byte(shown), 2), shown
	})
}

// edit saves a changed file at the desk again and again, and returns the least time on the
// clock until the page has what was changed.
func (b *bench) edit(name, page string, change func([]byte, int) ([]byte, string)) (measured, error) {
	folder := fresh(b.memory, "unit")
	if err := os.CopyFS(folder, os.DirFS(unitFolder)); err != nil {
		return measured{}, err
	}
	desk := exec.Command(b.noonbook, "desk", folder)
	out, err := desk.StdoutPipe()
	if err != nil {
		return measured{}, err
	}
	if err := desk.Start(); err != nil {
		return measured{}, err
	}
	defer desk.Wait()
	defer desk.Process.Kill()
	address := ""
	for lines := bufio.NewScanner(out); address == "" && lines.Scan(); {
		if at := strings.Index(lines.Text(), "http://"); at >= 0 {
			address, _, _ = strings.Cut(lines.Text()[at:], " ")
		}
	}
	if address == "" {
		return measured{}, errors.New("the desk told no address")
	}
	go io.Copy(io.Discard, out)
	text, err := os.ReadFile(filepath.Join(folder, name))
	if err != nil {
		return measured{}, err
	}
	least := time.Duration(math.MaxInt64)
	for round := range max(b.rounds, 2) {
		changed, shown := change(text, round+1)
		time.Sleep(100 * time.Millisecond) // an editor does not save at once again
		begin := time.Now()
		if err := os.WriteFile(filepath.Join(folder, name), changed, 0o666); err != nil {
			return measured{}, err
		}
		for {
			got, err := get(address + page)
			if err != nil {
				return measured{}, err
			}
			if bytes.Contains(got, []byte(shown)) {
				break
			}
			if time.Since(begin) > 20*time.Second {
				return measured{}, fmt.Errorf("%s does not show what was saved", page)
			}
			time.Sleep(time.Millisecond)
		}
		least = min(least, time.Since(begin))
	}
	return measured{float64(least) / float64(wholePress), milliseconds(least) + " ÷ " + milliseconds(wholePress), true}, nil
}

func get(address string) ([]byte, error) {
	answer, err := http.Get(address)
	if err != nil {
		return nil, err
	}
	defer answer.Body.Close()
	return io.ReadAll(answer.Body)
}
