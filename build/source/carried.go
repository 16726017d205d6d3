package source

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"path"
	"slices"
	"strings"

	"noonbook/build/file"
	"noonbook/build/form"
	"noonbook/build/problem"
)

// The files that lessons refer to are read into memory, one by one and together up
// to these bounds, and a drawing is looked through from end to end.
const (
	maxFile    = 24 << 20
	maxCarried = 64 << 20
	maxDrawing = 4 << 20
)

// carriedKinds are the kinds of files that a handbook carries along, by their
// endings, with how their bytes begin where that tells them. None of them runs or
// loads anything in a browser; an SVG is looked through.
var carriedKinds = map[string][]string{
	".svg": nil, ".png": {"\x89PNG\r\n\x1a\n"}, ".jpg": {"\xff\xd8\xff"}, ".jpeg": {"\xff\xd8\xff"}, ".gif": {"GIF87a", "GIF89a"}, ".webp": {"RIFF"},
	".pdf": {"%PDF-"}, ".csv": nil, ".txt": nil,
	".mp3": nil, ".ogg": {"OggS"}, ".wav": {"RIFF"}, ".m4a": nil, ".mp4": nil, ".webm": {"\x1a\x45\xdf\xa3"},
}

const whatIsCarried = "a handbook carries along pictures (.svg, .png, .jpg, .gif, .webp), .pdf, .csv, .txt, and sound or film (.mp3, .ogg, .wav, .m4a, .mp4, .webm)"

// pictureKinds are those that a page can show.
var pictureKinds = []string{".svg", ".png", ".jpg", ".jpeg", ".gif", ".webp"}

// carry takes a file along, under a flat name. files holds the names so far, folded,
// with the source of each.
func (r *reader) carry(name string, ref reference, files map[string]string) error {
	what := "file"
	if ref.image != nil {
		what = "picture"
	}
	name = r.found(name)
	if info, err := fs.Stat(r.folder, name); err == nil && info.IsDir() {
		r.problems.Add(ref.at, "%s %s is not a file", what, ref.target)
		return nil
	}
	if complaint := kindFault(name, ref.image != nil); complaint != "" {
		r.problems.Add(ref.at, "%s %s: %s", what, ref.target, complaint)
		return nil
	}
	flat := strings.ReplaceAll(name, "/", "-")
	if err := file.Sound(flat); err != nil {
		r.problems.Add(ref.at, "%s %s: %v", what, ref.target, err)
		return nil
	}
	if r.inset(name, ref, nil) {
		return nil
	}
	source, taken := files[file.Folded(flat)]
	switch {
	case taken && source != name:
		r.problems.Add(ref.at, "%s and %s would both be %s in the handbook", source, name, flat)
		return nil
	case !taken:
		src, err := r.content(name, what, ref)
		if err != nil || src == nil {
			return err
		}
		if r.inset(name, ref, src) {
			return nil
		}
		files[file.Folded(flat)] = name
		r.unit.Files = append(r.unit.Files, File{file.File{Name: flat, Bytes: src}, name, ref.staff, ref.at})
	}
	ref.lead.Target = []byte((&url.URL{Path: flat}).String())
	r.shared(ref, flat)
	r.size(ref, flat)
	return nil
}

// found returns the name under which the folder holds a file, which may write its
// accents in another form, or the name as it is.
func (r *reader) found(name string) string {
	if _, err := fs.Lstat(r.folder, name); err == nil {
		return name
	}
	dir := path.Dir(name)
	if dir != "." {
		dir = r.found(dir)
	}
	entries, _ := fs.ReadDir(r.folder, dir) // a folder that cannot be read holds nothing
	for _, e := range entries {
		if file.Decomposed(e.Name()) == file.Decomposed(path.Base(name)) {
			return path.Join(dir, e.Name())
		}
	}
	return name
}

// kindFault says why a file of this name is not carried; "" where it is.
func kindFault(name string, picture bool) string {
	ending := strings.ToLower(path.Ext(name))
	_, known := carriedKinds[ending]
	switch {
	case file.Leaving(path.Base(name)):
		return "a file whose name begins with a dot or ends in ~ is not carried along"
	case slices.Contains([]string{".md", ".toml"}, strings.ToLower(path.Ext(strings.TrimSuffix(strings.ToLower(name), ".txt")))):
		return "what a unit is made of is not carried along; the class edition would hold it with its answers"
	case picture && !slices.Contains(pictureKinds, ending):
		return "it is no picture; " + whatIsCarried
	case !known:
		return "files of this kind are not carried along; " + whatIsCarried
	}
	return ""
}

// content reads a file to carry. It returns nil after reporting why it is not
// carried.
func (r *reader) content(name, what string, ref reference) ([]byte, error) {
	refuse := func(format string, args ...any) ([]byte, error) {
		r.problems.Add(ref.at, "%s %s %s", what, ref.target, fmt.Sprintf(format, args...))
		return nil, nil
	}
	info, err := fs.Stat(r.folder, name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return refuse("is not in the content folder%s", r.meant(name))
	case escapes(err):
		return refuse("leads outside the content folder")
	case err != nil:
		return nil, fmt.Errorf("reading %s: %w", path.Join(r.root, name), err)
	case !info.Mode().IsRegular():
		return refuse("is not a file")
	case info.Size() > maxFile:
		return refuse("has %.1f MB; up to %d MB are taken along", float64(info.Size())/1e6, maxFile>>20)
	case r.carried+info.Size() > maxCarried:
		return refuse("is one too many: with it the files of the unit have %.1f MB, and up to %d MB are taken along", float64(r.carried+info.Size())/1e6, maxCarried>>20)
	}
	src, err := fs.ReadFile(r.folder, name)
	if err != nil {
		return nil, fmt.Errorf("reading %s: %w", path.Join(r.root, name), err)
	}
	if text, ok := r.texts[sha256.Sum256(src)]; ok {
		return refuse("is %s, which the unit is made of; the class edition would hold it with its answers", text)
	}
	ending := strings.ToLower(path.Ext(name))
	if begins := carriedKinds[ending]; begins != nil && !slices.ContainsFunc(begins, func(b string) bool { return bytes.HasPrefix(src, []byte(b)) }) {
		return refuse("is not what its name says: its bytes are not those of a %s file", ending)
	}
	if ending == ".svg" {
		if len(src) > maxDrawing {
			return refuse("has %.1f MB; a drawing may have up to %d MB", float64(len(src))/1e6, maxDrawing>>20)
		}
		if fault, line, column := svgFault(src); fault != "" {
			r.problems.Add(problem.Place{File: path.Join(r.root, name), Line: line, Column: column}, "the drawing holds %s; a handbook carries no drawing that could run or load anything", fault)
			return nil, nil
		}
	}
	r.carried += int64(len(src))
	return src, nil
}

// meant names the file of the same folder that is nearest to a name.
func (r *reader) meant(name string) string {
	entries, _ := fs.ReadDir(r.folder, path.Dir(name))
	var names []string
	for _, e := range entries {
		if kindFault(e.Name(), false) == "" {
			names = append(names, e.Name())
		}
	}
	return form.Meant(path.Base(name), names)
}

// kindOf names what stands in the place of a file.
func kindOf(mode fs.FileMode) string {
	switch {
	case mode.IsDir():
		return "a folder"
	case mode&fs.ModeNamedPipe != 0:
		return "a pipe"
	case mode&fs.ModeSocket != 0:
		return "a socket"
	}
	return "a device"
}

// shared keeps a file for staff only as long as every reference to it is.
func (r *reader) shared(ref reference, flat string) {
	for i, f := range r.unit.Files {
		if f.Name == flat && !ref.staff {
			r.unit.Files[i].Staff = false
		}
	}
}

// size gives a picture the size that its file tells.
func (r *reader) size(ref reference, flat string) {
	i := slices.IndexFunc(r.unit.Files, func(f File) bool { return f.Name == flat })
	if ref.image == nil || i < 0 {
		return
	}
	width, height := pictureSize(r.unit.Files[i].Bytes)
	if width == 0 || height == 0 {
		r.problems.Warn(ref.at, "picture %s tells no size that can be read (PNG, JPEG, GIF and SVG do), so the page moves while it loads", ref.target)
		return
	}
	ref.lead.Width, ref.lead.Height = width, height
}
