/* Which commands and options are there? */
#include "apps/cli/command.h"

const option_row option_rows[OPTION_COUNT] = {
    {OPTION_JSON, "--json", NULL, NULL, "answer as JSON on standard output"},
    {OPTION_SARIF, "--sarif", NULL, NULL, "findings as SARIF 2.1.0"},
    {OPTION_JUNIT, "--junit", NULL, NULL, "findings as JUnit XML"},
    {OPTION_UNITS, "--units", NULL, "metric|us", "units shown; the file keeps its own"},
    {OPTION_ALL, "--all", NULL, NULL, "also what passed, and every assumption"},
    {OPTION_TODAY, "--today", NULL, "YYYY-MM-DD", "the day by which waivers are judged"},
    {OPTION_OUTPUT, "--output", "-o", "FILE", "write there instead of standard output"},
    {OPTION_COLOUR, "--colour", NULL, "auto|always|never", "colour beside the signs"},
    {OPTION_LIKE, "--like", NULL, "trainer|bizjet|medium|large", "the engine to begin with"},
    {OPTION_UNSET, "--unset", NULL, NULL, "remove the key instead of setting it"},
    {OPTION_STEP, "--step", NULL, "LENGTH", "step of widths (0.5 mm) or diameters (0.05 mm)"},
    {OPTION_FIGURE, "--figure", NULL,
     "behind|front|pads|unrolled|power|speeds|teeth|root|margins|mass|selectivity|necks|widths|"
     "float|"
     "modes|interference|campbell|reach|start|seizure|jolt|swing|play|heat|stops",
     "which picture"},
    {OPTION_FORMAT, "--format", NULL, "svg|pdf|png|dxf", "format of the pictures in a folder"},
    {OPTION_CONDITION, "--condition", NULL, "NAME",
     "the condition that is shown, or in which something fails"},
    {OPTION_AT, "--at", NULL, "ADDRESS",
     "the mesh whose teeth or roots are drawn; the part that fails; the accessory that seizes; the "
     "jolt, as 'generator 1: short' or slam; the number of the mode of torsion"},
    {OPTION_GROUND, "--ground", NULL, "light|dark|contrast|print", "colours of the picture"},
    {OPTION_SCALE, "--scale", NULL, "NUMBER", "pixels a unit in a PNG (2)"},
    {OPTION_MAN, "--man", NULL, NULL, "the manual page, for man(1)"},
    {OPTION_WRITE, "--write", NULL, NULL, "put the new values into the file"},
    {OPTION_KEEP, "--keep", NULL, "ADDRESS",
     "what stands there keeps its box, face, side and speed; may stand more than once"},
    {OPTION_ADD, "--add", NULL, "FILE", "a file whose accessories join those of the drive"},
    {OPTION_WITHIN, "--within", NULL, "TIME", "end after so long with the best so far, as 30 s"},
    {OPTION_ANSWERS, "--answers", NULL, "NUMBER", "how many different answers (5)"},
    {OPTION_THREADS, "--threads", NULL, "NUMBER", "threads; the answer is the same for any"},
    {OPTION_MEMORY, "--memory", NULL, "MB", "memory at most; then the best so far (3072)"},
    {OPTION_TOLERANCE, "--tolerance", NULL, "SHARE", "how far off the ratio may be (1 %)"},
    {OPTION_TEETH, "--teeth", NULL, "LOW..HIGH", "teeth that a gear may have (17..97)"},
    {OPTION_TRAIN, "--train", NULL, "pair|idler|cluster", "one mesh, or two of them (pair)"},
    {OPTION_CENTRE, "--centre", NULL, "LENGTH", "centre distance that a pair must have"},
    {OPTION_MODULE, "--module", NULL, "LENGTH", "its module"},
    {OPTION_PRESSURE_ANGLE, "--pressure-angle", NULL, "ANGLE", "its pressure angle (20 deg)"},
    {OPTION_SHARING, "--sharing", NULL, NULL, "list also teeth that share a divisor"},
    {OPTION_PORT, "--port", NULL, "NUMBER", "the port of the page; 0: any that is free (0)"},
    {OPTION_NO_BROWSER, "--no-browser", NULL, NULL, "print the link and open nothing"},
    {OPTION_WHY_NOT, "--why-not", NULL, "PLACE",
     "what forbids, or costs, a place such as 'fuel pump on lp'; may stand more than once"},
    {OPTION_FRONT, "--front", NULL, "NUMBER",
     "take the wrap back in so many steps, and say what each costs"},
    {OPTION_PAPER, "--paper", NULL, "A4|Letter", "paper of the pages (A4)"},
    {OPTION_WORKINGS, "--workings", NULL, "governing|all",
     "also the workings: of what is nearest to its limit, or of every number"},
    {OPTION_VERIFY, "--verify", NULL, "FILE",
     "search nothing: is this answer, written with --json, true of the drive?"},
    {OPTION_PROGRESS, "--progress", NULL, NULL,
     "tell on standard error how far the search is, also where that is no terminal"},
    {OPTION_LOADS, "--loads", NULL, "SHARE",
     "which answer is the lightest with loads up to so much less or more, as 10 %"},
    {OPTION_BANDS, "--bands", NULL, "SPEED",
     "and with bands up to so much narrower at each end, as 50 rpm"},
    {OPTION_STUDY, "--study", NULL, "FILE",
     "put every answer under the same samples of a study file, and tell which holds most often"},
    {OPTION_PICTURE, "--picture", NULL, "FILE", "the answers as a picture too: .svg, .pdf or .png"},
    {OPTION_RAMP, "--ramp", NULL, "TIME",
     "a friction that would stop its rotor alone in that time; a load that grows in it"},
    {OPTION_NECK_OF, "--neck-of", NULL, "ACCESSORY", "put the neck of that one in its place"},
    {OPTION_RECHECK, "--recheck", NULL, NULL,
     "beside the report, its steps as data and a script that redoes them"},
    {OPTION_SHEETS, "--sheets", NULL, "teeth|shims",
     "instead of the report, sheets for makers and builders"},
    {OPTION_SEIZURES, "--seizures", NULL, NULL,
     "also seizures in time: of every accessory, or of those with necks"},
    {OPTION_CHOOSE, "--choose", NULL, "teeth|bearings|necks", "what is chosen (teeth)"},
    {OPTION_AMBIENT, "--ambient", NULL, "TEMPERATURE", "of the air, as '-20 degC'"},
    {OPTION_OIL_TEMPERATURE, "--oil-temperature", NULL, "TEMPERATURE",
     "of the oil in the bearings, as '-20 degC'"},
    {OPTION_GRID, "--grid", NULL, NULL, "also starts over temperatures of air and oil"},
    {OPTION_THROUGH, "--through", NULL, "COURSE",
     "conditions and how long each lasts, as 'ground idle 5 min, take-off 120 s'"},
    {OPTION_SOAK, "--soak", NULL, "TEMPERATURE",
     "of everything at the beginning (the coldest that gears may be)"},
    {OPTION_SAMPLES, "--samples", NULL, "NUMBER", "how many necks are drawn (1000000)"},
    {OPTION_NUMBERS, "--numbers", NULL, NULL, "with ratios and torques, not in words alone"},
    {OPTION_KEY, "--key", NULL, NULL, "with the answers, on a page of their own"},
    {OPTION_SLURM, "--slurm", NULL, "RANKS",
     "compute nothing: print the script of a Slurm job of so many processes"},
    {OPTION_SAMPLE, "--sample", NULL, "ID", "compute nothing: write the drive file of one sample"},
    {OPTION_AGAINST, "--against", NULL, "OLD",
     "the drive as it was issued last: what changed bears a bar"},
    {OPTION_LARGE, "--large", NULL, NULL, "in large print"},
    {OPTION_TO, "--to", NULL, "CONDITION", "go on from idle to that condition, as take-off"},
};

#define COUNT(list)   (sizeof(list) / sizeof(list)[0])
#define OPTIONS(list) (list), COUNT(list)

static const option_id new_options[]   = {OPTION_LIKE, OPTION_OUTPUT, OPTION_JSON};
static const option_id check_options[] = {OPTION_JSON, OPTION_SARIF, OPTION_JUNIT,  OPTION_UNITS,
                                          OPTION_ALL,  OPTION_TODAY, OPTION_OUTPUT, OPTION_COLOUR};
static const option_id rate_options[]  = {OPTION_JSON, OPTION_UNITS, OPTION_ALL, OPTION_OUTPUT,
                                          OPTION_COLOUR};
static const option_id size_options[]  = {OPTION_CHOOSE, OPTION_STEP,  OPTION_WRITE, OPTION_OUTPUT,
                                          OPTION_JSON,   OPTION_UNITS, OPTION_TODAY, OPTION_COLOUR};
static const option_id necks_options[] = {OPTION_SEIZURES, OPTION_SAMPLES, OPTION_THREADS,
                                          OPTION_JSON,     OPTION_UNITS,   OPTION_OUTPUT,
                                          OPTION_COLOUR};
static const option_id twist_options[] = {OPTION_JSON, OPTION_UNITS, OPTION_OUTPUT, OPTION_COLOUR};
static const option_id oil_options[] = {OPTION_CONDITION, OPTION_JSON, OPTION_UNITS, OPTION_OUTPUT,
                                        OPTION_COLOUR};
static const option_id seize_options[] = {OPTION_CONDITION, OPTION_RAMP,  OPTION_NECK_OF,
                                          OPTION_JSON,      OPTION_UNITS, OPTION_OUTPUT,
                                          OPTION_COLOUR};
static const option_id jolt_options[]  = {OPTION_CONDITION, OPTION_RAMP,   OPTION_JSON,
                                          OPTION_UNITS,     OPTION_OUTPUT, OPTION_COLOUR};
static const option_id start_options[] = {OPTION_TO,     OPTION_AMBIENT, OPTION_OIL_TEMPERATURE,
                                          OPTION_GRID,   OPTION_JSON,    OPTION_UNITS,
                                          OPTION_OUTPUT, OPTION_COLOUR};
static const option_id warm_options[] = {OPTION_THROUGH, OPTION_SOAK,   OPTION_AMBIENT, OPTION_JSON,
                                         OPTION_UNITS,   OPTION_OUTPUT, OPTION_COLOUR};
static const option_id effects_options[] = {OPTION_CONDITION, OPTION_ALL,   OPTION_JSON,
                                            OPTION_PAPER,     OPTION_UNITS, OPTION_OUTPUT,
                                            OPTION_COLOUR};
static const option_id sheet_options[] = {OPTION_OUTPUT, OPTION_PAPER, OPTION_AGAINST, OPTION_JSON,
                                          OPTION_COLOUR};
static const option_id why_options[]   = {OPTION_JSON, OPTION_UNITS, OPTION_OUTPUT, OPTION_COLOUR};
static const option_id arrange_options[] = {
    OPTION_KEEP,   OPTION_ADD,     OPTION_WHY_NOT,  OPTION_FRONT,  OPTION_LOADS,   OPTION_BANDS,
    OPTION_STUDY,  OPTION_VERIFY,  OPTION_PROGRESS, OPTION_WITHIN, OPTION_ANSWERS, OPTION_THREADS,
    OPTION_MEMORY, OPTION_PICTURE, OPTION_GROUND,   OPTION_SCALE,  OPTION_WRITE,   OPTION_OUTPUT,
    OPTION_JSON,   OPTION_UNITS,   OPTION_COLOUR};
static const option_id ratio_options[]   = {OPTION_TOLERANCE, OPTION_TEETH,   OPTION_TRAIN,
                                            OPTION_CENTRE,    OPTION_MODULE,  OPTION_PRESSURE_ANGLE,
                                            OPTION_SHARING,   OPTION_ANSWERS, OPTION_JSON,
                                            OPTION_OUTPUT,    OPTION_COLOUR};
static const option_id set_options[]     = {OPTION_UNSET, OPTION_OUTPUT, OPTION_JSON};
static const option_id compare_options[] = {OPTION_JSON, OPTION_UNITS, OPTION_TODAY, OPTION_OUTPUT,
                                            OPTION_COLOUR};
static const option_id draw_options[]    = {
       OPTION_OUTPUT, OPTION_FIGURE, OPTION_FORMAT, OPTION_CONDITION, OPTION_AT,
       OPTION_GROUND, OPTION_UNITS,  OPTION_SCALE,  OPTION_SEIZURES,  OPTION_JSON};
static const option_id open_options[]   = {OPTION_PORT, OPTION_NO_BROWSER};
static const option_id report_options[] = {OPTION_OUTPUT, OPTION_PAPER,    OPTION_WORKINGS,
                                           OPTION_SHEETS, OPTION_SEIZURES, OPTION_RECHECK,
                                           OPTION_UNITS,  OPTION_TODAY,    OPTION_JSON};
static const option_id brief_options[]  = {OPTION_OUTPUT, OPTION_PAPER, OPTION_NUMBERS, OPTION_KEY,
                                           OPTION_LARGE,  OPTION_UNITS, OPTION_TODAY,   OPTION_JSON};
static const option_id study_option_ids[] = {
    OPTION_SAMPLE,  OPTION_SLURM,  OPTION_PICTURE,  OPTION_GROUND, OPTION_SCALE,
    OPTION_THREADS, OPTION_WITHIN, OPTION_PROGRESS, OPTION_ALL,    OPTION_OUTPUT,
    OPTION_JSON,    OPTION_UNITS,  OPTION_TODAY,    OPTION_COLOUR};
static const option_id list_options[] = {OPTION_JSON, OPTION_OUTPUT};
static const option_id help_options[] = {OPTION_MAN};

const command_row commands[] = {
    {"new", "NAME --like trainer|bizjet|medium|large", "new-file", 1, 1,
     "write a commented starting file",
     "Writes NAME (with the ending .yaml when it has none) as a complete, commented drive file of "
     "an\n"
     "invented engine.  An existing file is never overwritten.",
     OPTIONS(new_options), run_new},
    {"check", "FILE", "file", 1, 1, "compute the whole drive and judge it",
     "Prints the speed of every pad in every condition with its band, the power taken from each\n"
     "spool, the balances, and the findings with what would close them.",
     OPTIONS(check_options), run_check},
    {"arrange", "FILE", "file", 1, 1, "find the lightest arrangement, and prove that it is",
     "Searches every order, face, box, tooth number, module and idler that the file allows (see\n"
     "`arrange` in towershaft notation drive-file.md) and prints the lightest arrangement with "
     "the\n"
     "proof that nothing lighter exists, further ones that differ in order, face or box, and what "
     "all\n"
     "rules of check say of each.  --write puts the first that holds into the file.\n"
     "--why-not asks about a place: ACCESSORY on SPOOL, with any of front, rear, clockwise,\n"
     "anticlockwise and input behind it, or ACCESSORY with ACCESSORY (on one shaft).\n"
     "--verify FILE reads such an answer back and holds it against the drive with other code; exit "
     "code\n"
     "1 and the reasons when it is not true.\n"
     "Interrupted (Ctrl-C) or out of time it prints the best so far with what may be left.",
     OPTIONS(arrange_options), run_arrange},
    {"rate", "FILE", "file", 1, 1, "compute stand-alone elements by their standards",
     "FILE describes gear pairs, bevel pairs, single gears, tolerances and materials by the "
     "symbols\n"
     "of their standards; towershaft notation rate-file.md tells how.  Prints every result with "
     "its\n"
     "unit and its clause, what is assumed, and what each element lacks or cannot be.",
     OPTIONS(rate_options), run_rate},
    {"ratio", "RATIO", "", 1, 1, "find all tooth numbers for a ratio",
     "RATIO is driven over driving teeth: 56/24, 2.333 or 2.3..2.4.  Counts every pair within the\n"
     "tolerance, lists the closest and the lightest that hunt, and proves that none is closer; "
     "says\n"
     "why where none is to be had.  --train idler takes an idler between, --train cluster two "
     "gears\n"
     "on one shaft between.  With --centre and --module the profile shifts stand beside each "
     "pair.\n"
     "Exit code 1: no such teeth within the tolerance.",
     OPTIONS(ratio_options), run_ratio},
    {"size", "FILE", "file", 1, 1, "choose widths, bearings or necks that hold",
     "Keeps the arrangement and finds the narrowest faces, in steps, with which every cylindrical "
     "mesh\n"
     "keeps the safeties of `limits` in every condition and over the whole life.  --choose "
     "bearings\n"
     "takes the lightest bearings of the table that hold for life, static safety, speed and least "
     "load;\n"
     "--choose necks gives designed necks the diameter that balances breaking too early and too "
     "late.\n"
     "Nothing is written unless asked: --write changes those values in FILE and no other byte, -o\n"
     "writes the changed text to another file; when something does not hold, nothing is written.\n"
     "Exit code 0: all holds with the new values.",
     OPTIONS(size_options), run_size},
    {"effects", "FILE [PART]", "file", 1, 2, "tell what stops when a part fails",
     "Takes every part of the drive in every way in which it may fail and prints which "
     "accessories\n"
     "stop, which are in doubt and what it does to the engine; then every single failure and "
     "every\n"
     "pair that brings each effect about.  With PART, by its name or address, one part in full: "
     "what\n"
     "breaks for it and at which torque, the way on which each accessory is cut off, what goes on "
     "at\n"
     "which speed, what would be seen: a card for who maintains the engine, which -o with the "
     "ending\n"
     ".pdf or .html writes on paper.",
     OPTIONS(effects_options), run_effects},
    {"necks", "FILE", "file", 1, 1, "draw a million necks, and tell chances",
     "Prints of every neck the torques between which it breaks for certain, what it must pass and\n"
     "what its way bears.  Of a designed neck (`diameter`) also how a million drawn ones break, "
     "how\n"
     "likely it breaks too early in its life or too late, by the laws and by the samples, and the\n"
     "diameter at which both are as likely; size --choose necks takes that one.  --seizures "
     "follows\n"
     "a seizure at every neck in time, and tells which part comes nearest to what it bears.  Exit "
     "code 2: a "
     "band\n"
     "or a chance could not be computed.",
     OPTIONS(necks_options), run_necks},
    {"twist", "FILE", "file", 1, 1, "compute the torsional modes",
     "Prints the natural frequencies of every tree of the drive in torsion, where each is soft, "
     "what\n"
     "moves most and which turn or tooth frequency comes nearest to it; twice where a clutch lets "
     "the\n"
     "starter go.  draw --figure modes shows the shapes.  Then by how much\n"
     "the torque swings in every mesh, radial shaft and pad, and what shakes it most.  Exit code "
     "2: a tree could not be "
     "computed.",
     OPTIONS(twist_options), run_twist},
    {"whirl", "FILE", "file", 1, 1, "compute the critical speeds of the shafts",
     "Prints for every shaft the first critical speeds, forward and backward, over its highest "
     "speed;\n"
     "of radial shafts also what the unbalance that its grade allows does, and which tubes are "
     "allowed:\n"
     "diameter, length and place of a mid bearing.  draw --figure campbell and reach show both.  "
     "Exit\n"
     "code 2: a shaft could not be computed.",
     OPTIONS(twist_options), run_whirl},
    {"oil", "FILE", "file", 1, 1, "compute losses, heat and oil",
     "Prints for every condition the balance of power with its heat and how warm the oil becomes; "
     "for\n"
     "one condition (--condition, else the one with the most heat) what every mesh, bearing, seal "
     "and\n"
     "spline loses by two published methods, and the oil and the jets of every mesh; what colder "
     "and\n"
     "warmer feed would do; the drag of cold oil at the crank.  Exit code 2: the file lacks "
     "something.",
     OPTIONS(oil_options), run_oil},
    {"start", "FILE", "file", 1, 1, "follow a start from rest to idle, or to take-off",
     "The starter cranks the engine over light-off and its cut-out to idle, or the start hangs; "
     "`start`\n"
     "in the file tells the speeds, the spool its unlit drag and its lit torque.  Prints when "
     "what\n"
     "happens, the largest torque of every mesh against what it bears, every neck with its "
     "margin,\n"
     "and the energies.  --to goes on from idle to a faster condition, whose speed the control "
     "reaches\n"
     "evenly in the time `from idle in`.  Exit code 1: it does not come there, or a neck may "
     "break;\n"
     "2: the file lacks something, or it could not be computed.",
     OPTIONS(start_options), run_start},
    {"warm", "FILE", "file", 1, 1, "follow the play of the teeth as all grows hot",
     "Gears, casing and oil of every drive are followed from a cold soak through conditions of the "
     "file,\n"
     "with the heat that the losses make: how warm they become, what play is left between the "
     "gears "
     "at\n"
     "every moment, and whether the temperatures that the file tells for the play enclose those "
     "that\n"
     "come.  draw --figure play draws it.  Exit code 1: play is used up, or temperatures come that "
     "the\n"
     "file leaves out; 2: the file lacks something.",
     OPTIONS(warm_options), run_warm},
    {"seize", "FILE ACCESSORY", "file", 2, 2, "follow a seizure in time",
     "The accessory stops at once, or by growing friction with --ramp, and its tree is followed "
     "in\n"
     "time: when its neck breaks and after how many degrees, the largest torque of every part\n"
     "against what it bears, what turns on; with the neck at both ends of its band, and without "
     "it.\n"
     "Without --condition, in the one in which its pad turns fastest.  What breaks is told, not "
     "judged.\n"
     "Exit code 2: it could not be computed, or the energies do not add up.",
     OPTIONS(seize_options), run_seize},
    {"study", "FILE", "file", 1, 1, "vary values, and tell chances and what decides",
     "FILE names a drive, values in it with their laws, and numbers that are watched\n"
     "(docs/study-file.md).  The whole drive is computed for every sample.  -o FILE.sqlite keeps "
     "the\n"
     "samples (the answer still goes to standard output), and goes on where it was broken off; "
     "without it only the answer is left.  Under "
     "mpirun or\n"
     "srun all processes share the work, and the first of them keeps the samples.  Ends with "
     "0\n"
     "when all samples were computed, whether or not their drives hold.",
     OPTIONS(study_option_ids), run_study},
    {"jolt", "FILE JOLT [ACCESSORY]", "file", 2, 3, "follow a sudden load in time",
     "JOLT is short: the current of a generator is shorted; step: an accessory takes its overload "
     "at\n"
     "once; slam or chop: the spool is sped up or down; engage: the clutch of a starter takes hold "
     "of\n"
     "a turning engine.  `jolt` in the file tells how hard; with --ramp a step, slam or chop grows "
     "evenly\n"
     "in that time.  Prints the largest torque of every "
     "part\n"
     "against what it bears, and the neck that comes nearest to breaking; with all necks at their\n"
     "weakest, and without necks.  Without --condition, in the one in which the pad turns fastest, "
     "of\n"
     "engage in the slowest in which the starter does not drive.  Exit code 1: something\n"
     "breaks, with all necks at their weakest, though the load must be borne; 2: it could not be\n"
     "computed, or the energies do not add up.",
     OPTIONS(jolt_options), run_jolt},
    {"sheet", "FILE ACCESSORY", "file", 2, 2, "the interface sheet of a pad, for its maker",
     "Speeds with their bands, sense, torques, powers and oil in every condition, neck, spline, "
     "body,\n"
     "mass, overhang and place of the pad of that accessory, what they rest on and what the checks "
     "find\n"
     "there, in metric and US customary units beside each other.  -o with the ending .pdf or "
     ".html\n"
     "writes it so.  --against names the drive file as it was issued last: every row that changed\n"
     "bears a bar and what it was.",
     OPTIONS(sheet_options), run_sheet},
    {"why", "FILE [ADDRESS]", "file address", 1, 2, "show the working of any number",
     "ADDRESS is the path of a part, a colon and a symbol, and @ a condition where the number "
     "varies:\n"
     "  towershaft why drive.yaml 'drive/hp/box/clockwise/2:F_t@take-off'\n"
     "An address without a symbol lists the numbers that stand there; none at all lists the parts.",
     OPTIONS(why_options), run_why},
    {"set", "FILE ADDRESS [VALUE]", "file address value", 2, 3, "change one value of the file",
     "Replaces the bytes of one value and nothing else, then saves the file whole or not at all.\n"
     "With -o the changed text goes to another file.  A value that the notation cannot read is\n"
     "refused and the file stays as it was.",
     OPTIONS(set_options), run_set},
    {"compare", "BEFORE AFTER", "file file", 2, 2, "say what changed between two drives",
     "Compares inputs, ratios, speeds, powers and findings, in the order of consequence.",
     OPTIONS(compare_options), run_compare},
    {"draw", "FILE -o OUT", "file", 1, 1, "draw the drive",
     "OUT names the picture and, by its ending (.svg, .pdf, .png), its format.  When OUT is a "
     "folder\n"
     "(or ends in a slash) every picture is written into it.  The figures behind, front, pads, "
     "unrolled\n"
     "and float (take-offs and radial shafts in section) are also written in true size as .dxf, in "
     "mm or, with --units us, in inches.\n"
     "The endings .glb, .step and .json give the drive as bodies in space: .glb for viewers, with\n"
     "true teeth; .step by the program towershaft-step; .json as numbers.\n"
     "A mesh has the address of the shaft that it drives, such as drive/hp/box/clockwise/2; "
     "without\n"
     "--at, teeth and root show the mesh that governs: the least reserve of judged teeth, or else "
     "the\n"
     "highest load a width of face.  Of stops, --at names the part that fails, and perhaps how: "
     "\"generator 1: seized\".",
     OPTIONS(draw_options), run_draw},
    {"open", "FILE", "file", 1, 1, "work on the drive in a local page",
     "Prints a link that opens once, in a browser of this machine, and asks the desktop to follow "
     "it.\n"
     "The page shows the drive, changes FILE byte by byte, and can take back every act, also after "
     "a\n"
     "restart: the acts are kept beside FILE in .FILE.towershaft-journal.  Nothing leaves this "
     "machine.\n"
     "Ctrl-C ends.",
     OPTIONS(open_options), run_open},
    {"report", "FILE -o OUT", "file", 1, 1, "put everything about the drive on paper",
     "OUT is a .pdf or a .html file.  It holds the verdict, the findings, the assumptions, speeds "
     "and\n"
     "powers, pictures, teeth, rules with their sources and published cases that this build "
     "reproduces;\n"
     "with --workings also how the numbers came about.  The same file gives the same bytes.\n"
     "--sheets teeth writes a data sheet for every gear instead, a page each; --sheets shims "
     "where\n"
     "bevel gears must stand, their shims, and the backlash of every mesh (also .txt and .json).\n"
     "As .csv or .xlsx it is every number and every judgement, a row each, for spreadsheets.\n"
     "--recheck writes two files beside it: NAME.recheck.json with every step and its inputs, and\n"
     "NAME.recheck.py, a stand-alone Python script that redoes them and exits 1 on a difference.\n"
     "Exit code 0: it was written, whatever the verdict.",
     OPTIONS(report_options), run_report},
    {"brief", "FILE -o OUT", "file", 1, 1, "write a hand-out with a quiz",
     "For those who meet the drive the first time.  OUT is a .pdf or a .html file: what it is for, "
     "how\n"
     "the power goes and comes, why each pad turns as it does, what breaks first and what goes on, "
     "and\n"
     "questions whose answers the drive gives.  Ratios and torques only with --numbers; a .html "
     "page "
     "turns\n"
     "its gears, a .pdf shows them at rest.  --large is for large print.  --key adds the answers.  "
     "--json "
     "gives\n"
     "the words and the quiz with its key.",
     OPTIONS(brief_options), run_brief},
    {"rules", "[RULE]", "rule", 0, 1, "list the rules, or explain one",
     "RULE may be the capability in front of the names of its rules, such as B2.  Each rule says "
     "its question, why it matters, its level and its source.",
     OPTIONS(list_options), run_rules},
    {"doctor", "", "", 0, 0, "prove that this installation works",
     "Checks the libraries, numbers under this locale, the font, and published cases built in.",
     OPTIONS(list_options), run_doctor},
    {"notation", "[NAME]", "notation", 0, 1, "print the manual or schema of the drive file",
     "Without NAME, lists what there is.", OPTIONS(list_options), run_notation},
    {"complete", "SHELL", "shell", 1, 3, "print the completion script for bash, zsh or fish",
     "  towershaft complete bash \\\n"
     "    > ~/.local/share/bash-completion/completions/towershaft",
     NULL, 0, run_complete},
    {"help", "[COMMAND]", "command", 0, 1, "this list, or the page of one command", "",
     OPTIONS(help_options), run_help},
};

const size_t command_count = COUNT(commands);
