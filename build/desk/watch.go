package desk

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// Print is a mark of what lies in a folder: the names of its files, their sizes
// and when they were last written. It is another after something was saved,
// added, renamed or taken away. Folders whose name begins with a dot are left
// out, and so is a handbook that was pressed into the folder.
func Print(folder string) string {
	sum := sha256.New()
	err := filepath.WalkDir(folder, func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			fmt.Fprintln(sum, name, err) // one that was just taken away: changed, too
			return nil
		}
		if d.IsDir() {
			_, err := os.Stat(filepath.Join(name, ".noonbook-files"))
			if name != folder && (strings.HasPrefix(d.Name(), ".") || err == nil) {
				return fs.SkipDir
			}
			return nil
		}
		info, err := os.Stat(name) // of what a link leads to
		if err != nil {
			fmt.Fprintln(sum, name, err)
			return nil
		}
		fmt.Fprintln(sum, name, info.Size(), info.ModTime().UnixNano())
		return nil
	})
	if err != nil {
		fmt.Fprintln(sum, err)
	}
	return hex.EncodeToString(sum.Sum(nil))
}

// Watch calls again after each change of what look returns, once it has stayed
// the same from one look to the next: an editor may write a file in several
// steps. It returns when the context ends.
func Watch(ctx context.Context, every time.Duration, look func() string, again func()) {
	tick := time.NewTicker(every)
	defer tick.Stop()
	pressed := look()
	before := pressed
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
		now := look()
		if now != pressed && now == before {
			pressed = now
			again()
		}
		before = now
	}
}
