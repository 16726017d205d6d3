package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"net"
	"net/http"
	"os"
	"strconv"
	"sync"
	"time"

	"noonbook/build/desk"
	"noonbook/build/file"
	"noonbook/build/placeholder/entry"
	"noonbook/build/plan"
	"noonbook/build/problem"
	"noonbook/build/source"
)

const deskHelp = `noonbook desk shows the handbook on this machine while you write.

  noonbook desk [FOLDER] [--staff] [--port NUMBER] [--open]

It presses the lessons of the folder and prints an address to open in a browser.
Whenever a lesson or unit.toml is saved it presses again, and open pages load
themselves again. While something is wrong they stay as they were and show the
problems, as this window does. Ctrl-C ends it.

The address is a new one each time and cannot be guessed. Only this machine is
answered, and no web page that is open beside the desk.

On the page "Your school" you change unit.toml, and on others what the class measured,
without a text editor. Nothing else at the desk writes a file.

Without a folder it reads ./content, or this folder where it holds unit.toml, or
else the demo unit.

  --content FOLDER   read this folder, another way to name it
  --staff            show the staff edition, with answers
  --port NUMBER      answer at this port; any free one when left out
  --open             open the cover in the browser
`

// glance is how often the desk looks whether something was saved, where a look is quick.
const glance = 20 * time.Millisecond

func atDesk(ctx context.Context, args []string, out, errs io.Writer) error {
	flags := flag.NewFlagSet("desk", flag.ContinueOnError)
	folder := flags.String("content", "", "")
	staff := flags.Bool("staff", false, "")
	port := flags.Int("port", 0, "")
	opened := flags.Bool("open", false, "")
	words, err := parse(flags, args, out, errs, deskHelp)
	if err != nil {
		return err
	}
	if *port < 0 || *port > 65535 {
		return usage{fmt.Errorf("desk: port %d is outside 0 to 65535", *port)}
	}
	named, err := oneFolder("desk", *folder, words)
	if err != nil {
		return err
	}
	_, _, closing, err := open(named)
	if err != nil {
		return err // a wrong name, which will not mend itself
	}
	closing()
	noteDemo(out, named)
	t := &tender{folder: chosen(named), edition: plan.Class, desk: desk.New(), out: out, errs: errs}
	if *staff {
		t.edition = plan.Staff
	}
	if t.folder != "" { // nobody can change the demo
		t.offer(nil)
	}
	before := t.look() // what is saved from now on is pressed again
	t.again()
	listener, address, err := t.listen(*port)
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "the handbook is at %s until you press Ctrl-C\n", address)
	if t.folder != "" {
		fmt.Fprintf(out, "to change what is true of your school: %s%s\n", address, desk.Start)
	}
	if *opened {
		if err := show(address); err != nil {
			fmt.Fprintf(errs, "noonbook: no browser could be started: %v\n", err)
		}
	}
	return t.serve(ctx, listener, before)
}

// A tender keeps a desk up to date.
type tender struct {
	folder  string        // "" for the demo, which is part of the program
	waiting bool          // for a unit, which is laid out at the desk
	idle    time.Duration // without a request after which it ends; 0 for never
	edition plan.Edition
	desk    *desk.Desk
	out     io.Writer
	errs    io.Writer

	mu      sync.Mutex // of what is above, and of pressing
	pressed string     // the folder as it was last pressed

	memory source.Memory // of lessons
	known  entry.Known   // what the last pressing evaluated
	plan   *plan.Plan    // of that
}

// listen answers at a port of this machine, 0 for any, and returns the desk's address.
func (t *tender) listen(port int) (net.Listener, string, error) {
	listener, err := net.Listen("tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(port)))
	if err != nil {
		return nil, "", fmt.Errorf("desk: answering at port %d: %w", port, err)
	}
	return listener, "http://" + listener.Addr().String() + t.desk.Path(), nil
}

// serve answers until the context ends, and presses again when the folder is
// another than before.
func (t *tender) serve(ctx context.Context, listener net.Listener, before string) error {
	ctx, leave := context.WithCancel(ctx)
	defer leave()
	server := http.Server{
		Handler:           t.noting(ctx, leave, t.desk.Handler()),
		ReadHeaderTimeout: 10 * time.Second,
		BaseContext:       func(net.Listener) context.Context { return ctx },
	}
	if t.folder != "" || t.waiting {
		go desk.Watch(ctx, glance, before, t.look, t.changed)
	}
	go func() {
		<-ctx.Done()
		server.Close() // pages that wait for news are let go
	}()
	if err := server.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		return fmt.Errorf("desk: %w", err)
	}
	return nil
}

// noting ends the desk when nobody has asked it for a long time, where it is to.
func (t *tender) noting(ctx context.Context, leave func(), answer http.Handler) http.Handler {
	if t.idle == 0 {
		return answer
	}
	asked := make(chan struct{})
	go func() {
		for {
			select {
			case <-asked:
			case <-ctx.Done():
				return
			case <-time.After(t.idle):
				leave()
				return
			}
		}
	}()
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		select {
		case asked <- struct{}{}:
		case <-ctx.Done():
		}
		answer.ServeHTTP(w, r)
	})
}

func (t *tender) look() string {
	t.mu.Lock()
	folder := t.folder
	t.mu.Unlock()
	return desk.Print(folder)
}

// changed presses a folder that is another, unless it was pressed meanwhile.
func (t *tender) changed() {
	t.mu.Lock()
	same := t.pressed == desk.Print(t.folder)
	t.mu.Unlock()
	if !same {
		t.again()
	}
}

// again presses, and shows what the machine did to it as it shows problems: a file
// that cannot be read may be mended, and a folder that went may come back.
func (t *tender) again() {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.waiting {
		return
	}
	t.pressed = desk.Print(t.folder)
	err := t.press()
	if err == nil {
		return
	}
	text := oneLine(err.Error())
	if _, gone := os.Stat(t.folder); errors.Is(gone, fs.ErrNotExist) {
		text = oneLine(fmt.Sprintf("there is no folder %s any more; the desk presses again when it is back", t.folder))
	}
	fmt.Fprintf(t.errs, "noonbook: %s\n", text)
	t.desk.Put(desk.Pressing{Problems: []string{text}})
}

// press lays what the lessons say now on the desk. The error is what the machine
// did; problems of the content are shown.
func (t *tender) press() error {
	begin := time.Now()
	unit, problems, err := readHere(t.folder, &t.memory, &t.known)
	if err != nil {
		return err
	}
	var files []file.File
	if problems.Faults() == 0 {
		watch := progressOn(t.errs)
		var found problem.List
		t.plan, files, found, err = pressed(unit, t.edition, t.plan, &t.known, watch)
		watch.end()
		if err != nil {
			return err
		}
		problems = append(problems, found...).Sorted()
	}
	p := desk.Pressing{Problems: told(problems), Form: formTitle(unit)}
	if problems.Faults() == 0 {
		p.Files = files
		t.known.ForgetUnasked()
	}
	t.desk.Put(p)
	if len(problems) > 0 {
		report(t.errs, problems)
	}
	if p.Files != nil {
		tellGone(t.out, unit)
		fmt.Fprintf(t.out, "%s  %s in %d ms\n", begin.Format("15:04:05"), counted(pagesAmong(files), "page"), time.Since(begin).Milliseconds())
	}
	return nil
}

// told writes each problem as a page shows it.
func told(problems problem.List) []string {
	var list []string
	files := &shelf{}
	for _, one := range problems.Shown() {
		var b bytes.Buffer
		pen{&b, false}.problem(one, files)
		list = append(list, b.String())
	}
	return list
}
