package output

import (
	"archive/zip"
	"bytes"
	"fmt"
	"slices"
	"strings"
	"time"

	"noonbook/build/file"
)

// zipTime is the time of every file in a zip: the earliest that the format can
// hold (APPNOTE 6.3.10, section 4.4.6: years count from 1980). A pressing knows
// no clock, so that equal handbooks are equal bytes.
var zipTime = time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)

// Zip packs the files of a handbook below one folder, sorted by name.
func Zip(folder string, files []file.File) ([]byte, error) {
	files = slices.Clone(files)
	slices.SortFunc(files, func(a, b file.File) int { return strings.Compare(a.Name, b.Name) })
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, f := range files {
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
