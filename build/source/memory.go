package source

import (
	"bytes"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"sync"

	"noonbook/build/crew"
	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
)

// A Memory reads folders and remembers their lessons, so that reading one again, with
// answers to its conditions or after a lesson was saved, takes the time of what is another
// than before. One memory is for one catalogue; the zero value remembers nothing yet.
//
// A file that was saved takes the place of what it was. What no reading asks for any more
// goes when more than mostRemembered were used since the last time that something went.
type Memory struct {
	lock        sync.Mutex
	now, before map[string]written // by the file and the answers to its conditions
}

// mostRemembered are the bytes of lessons that make a memory forget what was not used
// while they came together: several times the demo, at a handful of different schools.
// The trees take some fifteen times as much.
const mostRemembered = 2 << 20

// A written lesson is one as its file and the answers to its conditions make it: no other
// lesson and no setting bears on it. Nobody changes it; a unit has a copy of the lesson,
// which shares the tree and the lists.
type written struct {
	src      []byte
	lesson   *Lesson // nil where the file is none
	problems problem.List
	texts    texts
}

// Read is source.Read with what the memory holds.
func (m *Memory) Read(folder fs.FS, root string, own fs.FS, catalogue []entry.Entry) (*Unit, problem.List, error) {
	return m.readFor(nil, folder, root, own, catalogue)
}

// readFor reads for the school of given settings, or that of unit.toml.
func (m *Memory) readFor(given *Given, folder fs.FS, root string, own fs.FS, catalogue []entry.Entry) (*Unit, problem.List, error) {
	m.forget()
	kept := keep(folder)
	unit, problems, err := m.read(kept, root, own, catalogue, given, nil)
	if unit != nil {
		unit.again = m.readAgain(kept, root, own, catalogue, given, problems)
	}
	return unit, problems, err
}

// forget begins a reading.
func (m *Memory) forget() {
	m.lock.Lock()
	defer m.lock.Unlock()
	used := 0
	for _, w := range m.now {
		used += len(w.src)
	}
	if m.now == nil || used > mostRemembered {
		m.now, m.before = map[string]written{}, m.now
	}
}

// recall returns what is remembered under a key of the file that has these bytes.
func (m *Memory) recall(key string, src []byte) (written, bool) {
	m.lock.Lock()
	defer m.lock.Unlock()
	w, ok := m.now[key]
	if !ok {
		w, ok = m.before[key]
	}
	if !ok || !bytes.Equal(w.src, src) {
		return written{}, false
	}
	m.now[key] = w
	return w, true
}

func (m *Memory) keep(key string, w written) {
	m.lock.Lock()
	defer m.lock.Unlock()
	m.now[key] = w
}

// key is under which a lesson is remembered: its file, and those of the answers that its
// blocks and lines ask for. There is none where its conditions are not known. first is the
// lesson as it was read without answers, where there are some now.
func (m *Memory) key(file string, src []byte, answers Answers) (key string, first *Lesson, ok bool) {
	if answers == nil {
		return file, nil, true
	}
	w, ok := m.recall(file, src)
	if first = w.lesson; first == nil || first.doubtful {
		return file, nil, ok && first == nil
	}
	key = file
	for _, c := range first.conditions {
		if stands, known := answers[c.At]; known {
			key += fmt.Sprint(" ", c.At.Line, ":", c.At.Column, " ", stands)
		}
	}
	return key, first, true
}

// lessons reads files, side by side, and takes their lessons into the unit in their order.
func (r *reader) lessons(folder fs.FS, root string, names []string) error {
	srcs := make([][]byte, len(names))
	for i, name := range names {
		var err error
		if srcs[i], err = r.read(folder, root, name, maxLesson); err != nil {
			return err
		}
	}
	read, errs := make([]written, len(names)), make([]error, len(names))
	crew.Each(len(names), nil, func(i int) {
		if srcs[i] != nil {
			read[i], errs[i] = r.written(root, names[i], srcs[i])
		}
	})
	for i, w := range read {
		if errs[i] != nil {
			return errs[i]
		}
		r.problems = append(r.problems, w.problems...)
		maps.Copy(r.texts, w.texts)
		if w.lesson != nil {
			l := *w.lesson
			r.unit.Lessons = append(r.unit.Lessons, &l)
		}
	}
	return nil
}

// written reads one file, or remembers it. A lesson for which other files were read is
// read each time.
func (r *reader) written(root, name string, src []byte) (written, error) {
	key, first, known := r.memory.key(path.Join(root, name), src, r.answers)
	if w, ok := r.memory.recall(key, src); known && ok {
		return w, nil
	}
	alone := *r // with problems of its own
	alone.unit, alone.problems, alone.texts, alone.asksRecords = nil, nil, texts{}, false
	l, err := alone.lesson(path.Join(root, name), name, src, first)
	w := written{src, l, alone.problems, alone.texts}
	if known && err == nil && !alone.asksRecords {
		r.memory.keep(key, w)
	}
	return w, err
}
