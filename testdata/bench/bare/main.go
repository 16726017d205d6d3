// Command bare does with a unit what a press cannot do without, and nothing else: it
// parses and renders every lesson with goldmark, minifies every page of a handbook that was
// pressed, and writes as many files of as many bytes.
//
//	bare UNIT HANDBOOK TARGET
package main

import (
	"bytes"
	"log"
	"os"
	"path/filepath"
	"runtime/debug"

	"github.com/tdewolff/minify/v2"
	"github.com/tdewolff/minify/v2/html"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
)

func main() {
	log.SetFlags(0)
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(400) // as the command does
	}
	if err := do(os.Args[1], os.Args[2], os.Args[3]); err != nil {
		log.Fatal("bare: ", err)
	}
}

func do(unit, handbook, target string) error {
	lessons, err := filepath.Glob(filepath.Join(unit, "*.md"))
	if err != nil {
		return err
	}
	markdown := goldmark.New(goldmark.WithExtensions(extension.Table))
	for _, name := range lessons {
		text, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		if err := markdown.Convert(text, &bytes.Buffer{}); err != nil {
			return err
		}
	}
	files, err := filepath.Glob(filepath.Join(handbook, "*"))
	if err != nil {
		return err
	}
	if err := os.MkdirAll(target, 0o777); err != nil {
		return err
	}
	page := html.Minifier{KeepDocumentTags: true, KeepEndTags: true, KeepQuotes: true}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		if filepath.Ext(name) == ".html" {
			if err := page.Minify(minify.New(), &bytes.Buffer{}, bytes.NewReader(text), nil); err != nil {
				return err
			}
		}
		if err := write(filepath.Join(target, filepath.Base(name)), text); err != nil {
			return err
		}
	}
	return nil
}

// write writes a new file, synced as a press does.
func write(name string, text []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	defer f.Close()
	if _, err := f.Write(text); err != nil {
		return err
	}
	return f.Sync()
}
