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

	"noonbook/build/file"
)

// Print is a mark of what lies in a folder: the names of its files, what kind of
// file each is and who may read it, their sizes and when they were last written.
// It is another after something was saved, added, renamed or taken away, also
// when the folder itself went or came back. It opens no file: a pipe or a socket
// may lie in the folder. Folders whose name begins with a dot are left out, what
// editors leave beside a file too, and so is a handbook that was pressed into the
// folder.
func Print(folder string) string {
	sum := sha256.New()
	root, err := filepath.EvalSymlinks(folder) // a walk does not begin at a link
	if err != nil {
		root = folder
	}
	err = filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			fmt.Fprintf(sum, "%q %v\n", name, err) // one that was just taken away: changed, too
			return nil
		}
		if d.IsDir() {
			_, err := os.Stat(filepath.Join(name, ".noonbook-files"))
			if name != root && (strings.HasPrefix(d.Name(), ".") || err == nil) {
				return fs.SkipDir
			}
			return nil
		}
		if file.Leaving(d.Name()) {
			return nil
		}
		info, err := os.Stat(name) // of what a link leads to
		switch {
		case err != nil:
			fmt.Fprintf(sum, "%q %v\n", name, err)
		case info.Mode().IsRegular():
			fmt.Fprintf(sum, "%q %v %d %d\n", name, info.Mode(), info.Size(), info.ModTime().UnixNano())
		default:
			fmt.Fprintf(sum, "%q %v\n", name, info.Mode())
		}
		return nil
	})
	if err != nil {
		fmt.Fprintln(sum, err)
	}
	return hex.EncodeToString(sum.Sum(nil))
}

// rest is how many times as long as it looked Watch rests at least: so looking takes no
// more than a few hundredths of a processor, or of the time of a slow disk.
const rest = 30

// Watch calls again when look returns something else than was pressed, and after
// each change that follows, once it has stayed the same from one look to the next:
// an editor may write a file in several steps. It looks so often, or where a look takes
// long more seldom, and returns when the context ends.
func Watch(ctx context.Context, every time.Duration, pressed string, look func() string, again func()) {
	before := pressed
	var took, last time.Duration // one look that was held up is none that takes long
	for {
		select {
		case <-ctx.Done():
			return
		case <-time.After(max(every, rest*min(took, last))):
		}
		begin := time.Now()
		now := look()
		took, last = time.Since(begin), took
		if now != pressed && now == before {
			pressed = now
			again()
		}
		before = now
	}
}
