package source

import (
	"io/fs"
	"sync"
)

// A keptFolder is a folder that remembers what was asked of it, so that a unit can be
// read again, in part, when the folder is closed. Readers may not write into what they
// are given.
type keptFolder struct {
	folder fs.FS
	lock   sync.Mutex
	told   map[string]told
}

type told struct {
	answer any
	err    error
}

func keep(folder fs.FS) *keptFolder { return &keptFolder{folder: folder, told: map[string]told{}} }

// once answers a question by asking the folder, or as it was answered before.
func once[T any](k *keptFolder, question, name string, ask func() (T, error)) (T, error) {
	k.lock.Lock()
	defer k.lock.Unlock()
	key := question + " " + name
	before, ok := k.told[key]
	if !ok {
		answer, err := ask()
		before = told{answer, err}
		k.told[key] = before
	}
	answer, _ := before.answer.(T)
	return answer, before.err
}

// Open is for what no other method answers; it is not remembered.
func (k *keptFolder) Open(name string) (fs.File, error) { return k.folder.Open(name) }

func (k *keptFolder) Stat(name string) (fs.FileInfo, error) {
	return once(k, "stat", name, func() (fs.FileInfo, error) { return fs.Stat(k.folder, name) })
}

func (k *keptFolder) Lstat(name string) (fs.FileInfo, error) {
	return once(k, "lstat", name, func() (fs.FileInfo, error) { return fs.Lstat(k.folder, name) })
}

func (k *keptFolder) ReadLink(name string) (string, error) {
	return once(k, "readlink", name, func() (string, error) { return fs.ReadLink(k.folder, name) })
}

func (k *keptFolder) ReadFile(name string) ([]byte, error) {
	return once(k, "read", name, func() ([]byte, error) { return fs.ReadFile(k.folder, name) })
}

func (k *keptFolder) ReadDir(name string) ([]fs.DirEntry, error) {
	return once(k, "list", name, func() ([]fs.DirEntry, error) { return fs.ReadDir(k.folder, name) })
}
