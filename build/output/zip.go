package output

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"
	"time"

	"noonbook/build/crew"
	"noonbook/build/file"
)

// zipTime is the time of every file in a zip: the earliest that the format can
// hold (APPNOTE 6.3.10, section 4.4.6: years count from 1980). A pressing knows
// no clock, so that equal handbooks are equal bytes.
var zipTime = time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)

// Zip packs the files of a handbook below one folder, sorted by name. They are deflated
// side by side, and then written one after the other.
func Zip(folder string, files []file.File) ([]byte, error) {
	files = slices.Clone(files)
	slices.SortFunc(files, func(a, b file.File) int { return strings.Compare(a.Name, b.Name) })
	packed, errs := make([]bytes.Buffer, len(files)), make([]error, len(files))
	var idle sync.Pool // writers between two files
	crew.Each(len(files), nil, func(i int) {
		packed[i].Grow(len(files[i].Bytes) / 3) // which pages are, and a little more
		errs[i] = deflate(&packed[i], files[i].Bytes, &idle)
	})
	room := len(sealOf(nil))
	for i, f := range files {
		room += packed[i].Len() + 2*len(folder+"/"+f.Name) + heads
	}
	var out bytes.Buffer
	out.Grow(room)
	w := zip.NewWriter(&out)
	for i, f := range files {
		w.RegisterCompressor(zip.Deflate, func(to io.Writer) (io.WriteCloser, error) { return deflated{to, packed[i].Bytes()}, errs[i] })
		header := zip.FileHeader{Name: folder + "/" + f.Name, Method: zip.Deflate, Modified: zipTime}
		header.SetMode(0o644)
		entry, err := w.CreateHeader(&header)
		if err == nil {
			_, err = entry.Write(f.Bytes)
		}
		if err != nil {
			return nil, fmt.Errorf("packing %s: %w", f.Name, err)
		}
	}
	if err := w.Close(); err != nil {
		return nil, fmt.Errorf("packing the handbook: %w", err)
	}
	return out.Bytes(), nil
}

// heads are at most as many bytes as a file has in a zip beside itself and its name, twice:
// APPNOTE 6.3.10, sections 4.3.7, 4.3.9 and 4.3.12, and two fields for its time.
const heads = 128

// level is the quickest. An archive of the demo is a seventh larger than at the level of
// archive/zip, which takes almost twice the time, more than all else of one more school.
const level = flate.BestSpeed

func deflate(to io.Writer, b []byte, idle *sync.Pool) (err error) {
	w, _ := idle.Get().(*flate.Writer)
	if w != nil {
		w.Reset(to)
	} else if w, err = flate.NewWriter(to, level); err != nil {
		return err
	}
	defer idle.Put(w)
	_, err = w.Write(b)
	return errors.Join(err, w.Close())
}

// A deflated file takes the bytes of a file and writes what they were deflated to.
type deflated struct {
	to    io.Writer
	bytes []byte
}

func (d deflated) Write(b []byte) (int, error) { return len(b), nil }

func (d deflated) Close() error {
	_, err := d.to.Write(d.bytes)
	return err
}
