// Package web is the application as people see it: pages made on the server, a
// struct, a template and a test for each. It owns HTML, forms and what is said
// about a fault. Pages work without script and better with it. It must not know
// SQL, how a plan is found, or how paper is written.
package web

import (
	"html/template"
	"log/slog"
	"net/http"

	"plait.example/internal/app"
)

// Server answers every request of the application.
type Server struct {
	app     *app.App
	log     *slog.Logger
	options Options
	pages   map[string]*template.Template
	runs    *runs
	handler http.Handler
}

// Options are what the command line decides.
type Options struct {
	Log  *slog.Logger    // nil: silent
	Plan app.PlanOptions // for every search; Improved is the server's own
}

// New makes the server of an application. Close ends its searches.
func New(a *app.App, o Options) *Server {
	if o.Log == nil {
		o.Log = slog.New(slog.DiscardHandler)
	}
	s := &Server{app: a, log: o.Log, options: o, pages: parsePages(), runs: newRuns()}
	s.handler = s.guard(s.routes())
	return s
}

// ServeHTTP answers a request.
func (s *Server) ServeHTTP(w http.ResponseWriter, r *http.Request) { s.handler.ServeHTTP(w, r) }

// Close stops the searches that still run and waits for them.
func (s *Server) Close() { s.runs.close() }

// routes is every address of the application.
func (s *Server) routes() http.Handler {
	mux := http.NewServeMux()
	mux.Handle("GET /assets/", assets())
	pages := map[string]func(http.ResponseWriter, *http.Request) error{
		"GET /{$}":                                        s.list,
		"POST /practicals":                                s.start,
		"POST /practicals/open":                           s.open,
		"GET /class":                                      s.class,
		"POST /class":                                     s.saveClass,
		"GET /help":                                       s.help,
		"GET /practical/{id}":                             s.clock,
		"POST /practical/{id}":                            s.saveClock,
		"GET /practical/{id}/kitchen":                     s.kitchen,
		"POST /practical/{id}/kitchen":                    s.saveKitchen,
		"GET /practical/{id}/dishes":                      s.dishes,
		"POST /practical/{id}/dishes":                     s.saveDishes,
		"POST /practical/{id}/dishes/file":                s.readFile,
		"POST /practical/{id}/dishes/chosen":              s.chosen,
		"GET /practical/{id}/skills":                      s.skills,
		"GET /corrections":                                s.corrections,
		"POST /corrections":                               s.forget,
		"GET /corrections.yaml":                           s.correctionsFile,
		"POST /corrections/compare":                       s.compareCorrections,
		"POST /corrections/take":                          s.takeCorrections,
		"GET /techniques":                                 s.techniques,
		"POST /techniques":                                s.saveTechniques,
		"POST /techniques/drop":                           s.dropTechniques,
		"GET /techniques.csv":                             s.techniquesFile,
		"GET /practical/{id}/dishes/{letter}":             s.dish,
		"POST /practical/{id}/dishes/{letter}":            s.saveDish,
		"POST /practical/{id}/undo":                       s.undo,
		"POST /practical/{id}/redo":                       s.redo,
		"POST /practical/{id}/delete":                     s.remove,
		"POST /practical/{id}/restore":                    s.restore,
		"GET /practical/{id}/plan":                        s.plan,
		"POST /practical/{id}/plan":                       s.makePlan,
		"GET /practical/{id}/plan/progress":               s.progress,
		"POST /practical/{id}/plan/stop":                  s.stop,
		"GET /practical/{id}/plans":                       s.handedIn,
		"POST /practical/{id}/plans":                      s.handIn,
		"GET /practical/{id}/plans/progress":              s.checkProgress,
		"POST /practical/{id}/plans/rules":                s.changeRules,
		"POST /practical/{id}/plans/room":                 s.saveRoom,
		"GET /practical/{id}/plans/rules.yaml":            s.rulesFile,
		"POST /practical/{id}/dishes/{letter}/portions":   s.scaleDish,
		"GET /practical/{id}/plans/class.xlsx":            s.classSheet,
		"GET /practical/{id}/plans/asked.txt":             s.asked,
		"GET /practical/{id}/plans/{plan}":                s.handed,
		"POST /practical/{id}/plans/{plan}":               s.changeHanded,
		"GET /practical/{id}/plans/{plan}/plait.svg":      s.handedPlait,
		"GET /practical/{id}/plans/{plan}/original":       s.original,
		"GET /practical/{id}/plans/{plan}/page.html":      s.pupilPage(app.PageHTML),
		"GET /practical/{id}/plans/{plan}/page.pdf":       s.pupilPage(app.PagePDF),
		"GET /practical/{id}/plans/{plan}/page.docx":      s.pupilPage(app.PageWord),
		"GET /practical/{id}/plans/{plan}/commented.docx": s.pupilPage(app.Commented),
		"GET /practical/{id}/print":                       s.print,
		"GET /practical/{id}/plan.pdf":                    s.paper(app.PDF),
		"GET /practical/{id}/plan.json":                   s.paper(app.JSON),
		"GET /practical/{id}/plan.txt":                    s.paper(app.Text),
		"GET /practical/{id}/practical.yaml":              s.export,
		"GET /practical/{id}/plait.svg":                   s.plait,
		"/":                                               s.nothing,
	}
	for address, page := range pages {
		mux.Handle(address, s.page(page))
	}
	return mux
}

// page turns the error of a page into the page of the error.
func (s *Server) page(serve func(http.ResponseWriter, *http.Request) error) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if err := serve(w, r); err != nil {
			s.fail(w, r, err)
		}
	})
}
