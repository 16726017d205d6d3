package register

import (
	"bytes"
	"crypto/hmac"
	"crypto/rand"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"html/template"
	"mime"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"sync"

	"noonbook/build/form"
	"noonbook/build/school"
	"noonbook/build/typeset"
	"noonbook/compute/place"
	"noonbook/theme"
)

// Start is the page of the settings, below the desk's own folder of pages.
const Start = "school"

// A Register makes the pages and takes what is typed on them.
type Register struct {
	Folder func() string                    // the unit's; "" while there is none
	Begin  func(settings form.Values) error // lays a whole unit out, where there is none
	Fresh  form.Values                      // what a new unit begins with
	Press  func()                           // presses what was written
	Today  func() place.Date                // asked where no first day of term is typed
	Whole  func() bool                      // whether there is a handbook to go to
	secret []byte                           // of the pages' tokens
	writes sync.Mutex                       // one request at a time reads a file and writes it
	seen   versions
	mu     sync.Mutex        // of what follows
	spoken map[string]tongue // by language
}

// New returns a register whose pages nobody else can make.
func New() *Register {
	secret := make([]byte, 32)
	rand.Read(secret) // never fails: crypto/rand
	return &Register{secret: secret, spoken: map[string]tongue{}}
}

// token is what a page must send back to be written.
func (r *Register) token(page string) string {
	sum := hmac.New(sha256.New, r.secret)
	sum.Write([]byte(page))
	return hex.EncodeToString(sum.Sum(nil))
}

// Bounds of what a page sends, in bytes: the settings are some thousands, records some
// hundred a row.
const (
	mostSettings = 256 << 10
	mostRecords  = 4 << 20
)

// ServeHTTP answers below /desk/. The desk has looked at where the request comes from.
func (r *Register) ServeHTTP(w http.ResponseWriter, q *http.Request) {
	name := strings.TrimPrefix(q.URL.Path, "/desk/")
	reads := q.Method == http.MethodGet || q.Method == http.MethodHead
	field, isRecords := recordsPage(name)
	switch {
	case reads && name == "form.css":
		r.send(w, "text/css; charset=utf-8", http.StatusOK, typeset.FormStyle())
	case reads && name == "form.js":
		r.send(w, "text/javascript; charset=utf-8", http.StatusOK, theme.FormScript())
	case reads && name == "noon.js":
		r.noon(w, q)
	case name != Start && !isRecords:
		http.Error(w, "the desk has no such page", http.StatusNotFound)
	case reads && isRecords:
		r.showRecords(w, q, field)
	case reads:
		r.showSettings(w, q)
	case q.Method != http.MethodPost:
		w.Header().Set("Allow", "GET, HEAD, POST")
		http.Error(w, "a page is read or sent back", http.StatusMethodNotAllowed)
	case isRecords:
		if typed, ok := r.typed(w, q, name, mostRecords); ok {
			r.takeRecords(w, q, field, typed)
		}
	default:
		if typed, ok := r.typed(w, q, name, mostSettings); ok {
			r.takeSettings(w, q, typed)
		}
	}
}

// typed returns what a page sends back, after it has answered a request that may not
// write.
func (r *Register) typed(w http.ResponseWriter, q *http.Request, page string, most int64) (url.Values, bool) {
	kind, _, err := mime.ParseMediaType(q.Header.Get("Content-Type"))
	if err != nil || kind != "application/x-www-form-urlencoded" {
		http.Error(w, "this is not what a page of the desk sends", http.StatusUnsupportedMediaType)
		return nil, false
	}
	q.Body = http.MaxBytesReader(w, q.Body, most)
	if err := q.ParseForm(); err != nil {
		var long *http.MaxBytesError
		if errors.As(err, &long) {
			http.Error(w, fmt.Sprintf("the page is too long; up to %d kB are taken", most>>10), http.StatusRequestEntityTooLarge)
		} else {
			http.Error(w, "this is not what a page of the desk sends", http.StatusBadRequest)
		}
		return nil, false
	}
	if token := q.PostForm["page-token"]; len(token) != 1 || !hmac.Equal([]byte(token[0]), []byte(r.token(page))) {
		http.Error(w, "this page is not one that the desk gave out since it was started; load it again", http.StatusForbidden)
		return nil, false
	}
	return q.PostForm, true
}

// recordsPage finds the kind of records whose page has the name: lens-log is that of
// records.lens_log.
func recordsPage(name string) (form.Field, bool) {
	for _, field := range school.Settings() {
		if field.Kind() == form.CSV && pageOf(field) == name {
			return field, true
		}
	}
	return form.Field{}, false
}

func pageOf(field form.Field) string {
	return strings.TrimSuffix(school.RecordsFile(field), ".csv")
}

// answer sends a page.
func (r *Register) answer(w http.ResponseWriter, status int, page typeset.FormPage) {
	page.Token = r.token(page.Action)
	if r.Whole != nil && r.Whole() {
		page.Handbook = "../"
	}
	t, err := r.tongue(page.Words.Code)
	var out bytes.Buffer
	if err == nil {
		err = typeset.WriteForm(&out, t.pages, page)
	}
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	r.send(w, "text/html; charset=utf-8", status, out.Bytes())
}

// A tongue is one language, read once.
type tongue struct {
	words *typeset.Words
	pages *template.Template
}

// tongue returns a language, English where there are no words for it.
func (r *Register) tongue(code string) (tongue, error) {
	if !slices.Contains(typeset.Languages(), code) {
		code = "en"
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	if t, ok := r.spoken[code]; ok {
		return t, nil
	}
	w, err := typeset.Language(code, false)
	if err != nil {
		return tongue{}, err
	}
	pages, err := typeset.Templates(w)
	if err != nil {
		return tongue{}, err
	}
	r.spoken[code] = tongue{w, pages}
	return r.spoken[code], nil
}

func (r *Register) send(w http.ResponseWriter, kind string, status int, text []byte) {
	w.Header().Set("Content-Type", kind)
	w.WriteHeader(status)
	w.Write(text) // a reader who left is no fault of ours
}

// onward leads to another page, named from this one: the desk's path is not known here.
func onward(w http.ResponseWriter, to string) {
	w.Header().Set("Location", to)
	w.WriteHeader(http.StatusSeeOther)
}

// failed tells what the machine did.
func failed(w http.ResponseWriter, err error) {
	http.Error(w, err.Error(), http.StatusInternalServerError)
}

// versions are files as pages were made from them, by their checksums, so that a page
// that comes back can be compared with what it showed. The oldest goes when there are
// many.
type versions struct {
	mu    sync.Mutex
	files map[string][]byte
	order []string
}

const mostVersions = 64

func (v *versions) keep(file []byte) (sum string) {
	sum = sumOf(file)
	v.mu.Lock()
	defer v.mu.Unlock()
	if v.files == nil {
		v.files = map[string][]byte{}
	}
	if _, ok := v.files[sum]; !ok {
		v.files[sum] = file
		v.order = append(v.order, sum)
		if len(v.order) > mostVersions {
			delete(v.files, v.order[0])
			v.order = v.order[1:]
		}
	}
	return sum
}

func (v *versions) of(sum string) ([]byte, bool) {
	v.mu.Lock()
	defer v.mu.Unlock()
	file, ok := v.files[sum]
	return file, ok
}

// sumOf is the checksum of a file; nil stands for one that is not there.
func sumOf(file []byte) string {
	if file == nil {
		return "none"
	}
	sum := sha256.Sum256(file)
	return hex.EncodeToString(sum[:])
}
