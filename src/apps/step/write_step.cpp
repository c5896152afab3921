// write_step.cpp: how are bodies made of sections and outlines, and how are they written?
#include "write_step.hpp"

#include <APIHeaderSection_MakeHeader.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <BRepPrimAPI_MakeRevol.hxx>
#include <GC_MakeArcOfCircle.hxx>
#include <Geom_TrimmedCurve.hxx>
#include <Interface_Static.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_Printer.hxx>
#include <STEPCAFControl_Writer.hxx>
#include <STEPControl_Controller.hxx>
#include <STEPEdit.hxx>
#include <Standard_Failure.hxx>
#include <StepData_Protocol.hxx>
#include <StepData_StepModel.hxx>
#include <StepData_StepWriter.hxx>
#include <TCollection_HAsciiString.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Wire.hxx>
#include <XCAFApp_Application.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <XSControl_WorkSession.hxx>
#include <gp_Ax2.hxx>
#include <gp_Circ.hxx>

#include <cmath>
#include <map>
#include <sstream>

namespace
{

constexpr double mm = 1e3;

[[noreturn]] void fail(const Body &body, const char *why)
{
    throw std::runtime_error(body.name + ", " + body.kind + ": " + why);
}

// The section lies in the plane of `right` and the axis, and turns about the axis.
TopoDS_Shape revolved(const Body &body)
{
    BRepBuilderAPI_MakeWire wire;
    const std::size_t       count = body.section.size();
    for (std::size_t i = 0; i < count; i++) {
        const Pair             &a = body.section[i], &b = body.section[(i + 1) % count];
        BRepBuilderAPI_MakeEdge edge(gp_Pnt(a[1] * mm, 0.0, a[0] * mm),
                                     gp_Pnt(b[1] * mm, 0.0, b[0] * mm));
        if (!edge.IsDone())
            fail(body, "two points of its section fall together");
        wire.Add(edge.Edge());
    }
    if (!wire.IsDone())
        fail(body, "its section does not close");
    BRepBuilderAPI_MakeFace face(wire.Wire(), Standard_True);
    if (!face.IsDone())
        fail(body, "its section is not plane");
    return BRepPrimAPI_MakeRevol(face.Face(), gp_Ax1(gp::Origin(), gp::DZ())).Shape();
}

gp_Pnt at(const Pair &p, double z)
{
    return gp_Pnt(p[0] * mm, p[1] * mm, z * mm);
}

// An arc goes through its ends and its middle, so that pieces cut from two sides still meet.
TopoDS_Edge edge_of(const Piece &piece, const Pair &from, double z)
{
    if (!(piece.radius > 0.0))
        return BRepBuilderAPI_MakeEdge(at(from, z), at(piece.b, z)).Edge();
    const gp_Circ circle(gp_Ax2(at(piece.centre, z), gp::DZ(), gp::DX()), piece.radius * mm);
    if (std::abs(piece.turn) > 2.0 * M_PI - 1e-9)
        return BRepBuilderAPI_MakeEdge(circle).Edge();
    const double middle = piece.start + 0.5 * piece.turn;
    const Pair   through{piece.centre[0] + piece.radius * std::cos(middle),
                       piece.centre[1] + piece.radius * std::sin(middle)};
    return BRepBuilderAPI_MakeEdge(
               GC_MakeArcOfCircle(at(from, z), at(through, z), at(piece.b, z)).Value())
        .Edge();
}

TopoDS_Wire wire_of(const Body &body, const Loop &loop, double z)
{
    BRepBuilderAPI_MakeWire wire;
    for (std::size_t i = 0; i < loop.size(); i++)
        wire.Add(edge_of(loop[i], loop[(i + loop.size() - 1) % loop.size()].b, z));
    if (!wire.IsDone())
        fail(body, "an outline of its casing does not close");
    return wire.Wire();
}

// The largest loop is the outline, others are holes in it.
TopoDS_Shape drawn(const Body &body, const std::vector<Loop> &loops, double from, double to)
{
    std::size_t outer = 0;
    double      most  = 0.0;
    for (std::size_t i = 0; i < loops.size(); i++) {
        double twice = 0.0;
        for (const Piece &p : loops[i])
            twice += p.a[0] * p.b[1] - p.b[0] * p.a[1] +
                     p.radius * p.radius * (p.turn - std::sin(p.turn));
        if (std::abs(twice) > most) {
            most  = std::abs(twice);
            outer = i;
        }
    }
    BRepBuilderAPI_MakeFace face(gp_Pln(gp_Pnt(0.0, 0.0, from * mm), gp::DZ()),
                                 wire_of(body, loops[outer], from), Standard_True);
    for (std::size_t i = 0; i < loops.size(); i++)
        if (i != outer)
            face.Add(TopoDS::Wire(wire_of(body, loops[i], from).Reversed()));
    return BRepPrimAPI_MakePrism(face.Face(), gp_Vec(0.0, 0.0, (to - from) * mm)).Shape();
}

TopoDS_Shape shell(const Body &body)
{
    const TopoDS_Shape whole = drawn(body, body.outside, body.from, body.to);
    const TopoDS_Shape room =
        drawn(body, body.inside, body.from + body.floor, body.to - body.floor);
    BRepAlgoAPI_Cut cut(whole, room);
    if (!cut.IsDone())
        fail(body, "its room cannot be cut out");
    return cut.Shape();
}

gp_Dir direction(const Triple &v)
{
    return gp_Dir(v[0], v[1], v[2]);
}

TopLoc_Location place_of(const Body &body)
{
    gp_Trsf move;
    move.SetTransformation(
        gp_Ax3(gp_Pnt(body.origin[0] * mm, body.origin[1] * mm, body.origin[2] * mm),
               direction(body.axis), direction(body.right)),
        gp_Ax3());
    return TopLoc_Location(move);
}

TCollection_ExtendedString words(const std::string &text)
{
    return TCollection_ExtendedString(text.c_str(), Standard_True);
}

// Names of their own for parts of one kind on one shaft.
std::string name_of(const Body &body, std::map<std::string, int> &used)
{
    const std::string name  = body.name + ": " + body.kind;
    const int         count = ++used[name];
    return count == 1 ? name : name + " " + std::to_string(count);
}

void fill(const Bodies &bodies, const Handle(TDocStd_Document) & document)
{
    const Handle(XCAFDoc_ShapeTool) shapes = XCAFDoc_DocumentTool::ShapeTool(document->Main());
    const TDF_Label            assembly    = shapes->NewShape();
    std::map<std::string, int> used;
    TDataStd_Name::Set(assembly, words(bodies.title));
    for (const Body &body : bodies.parts) {
        const TopoDS_Shape shape = body.section.empty() ? shell(body) : revolved(body);
        const TDF_Label    part  = shapes->AddShape(shape, Standard_False);
        const std::string  name  = name_of(body, used);
        TDataStd_Name::Set(part, words(name));
        TDataStd_Name::Set(shapes->AddComponent(assembly, part, place_of(body)), words(name));
    }
    shapes->UpdateAssemblies();
}

// What would differ from run to run is said by the drive instead.
void head(const Bodies &bodies, const Handle(StepData_StepModel) & model)
{
    const auto text = [](const std::string &s) { return new TCollection_HAsciiString(s.c_str()); };
    APIHeaderSection_MakeHeader header(model);
    header.SetName(text(bodies.title));
    header.SetTimeStamp(text("1970-01-01T00:00:00"));
    header.SetOriginatingSystem(text("towershaft " + bodies.version));
    header.SetAuthorisation(text("preliminary design aid; revision " + bodies.revision));
    header.SetAuthorValue(1, text(""));
    header.SetOrganizationValue(1, text(""));
    header.SetDescriptionValue(1, text("shafts, gear blanks, casings and bodies of a drive"));
}

// ISO 10303-21 has ASCII alone in its strings: other letters stand as \X4\ and eight hexadecimal
// digits.  The kernel leaves them as UTF-8, which only strings can hold.
std::string in_ascii(const std::string &file)
{
    static const char hex[] = "0123456789ABCDEF";
    std::string       out;
    for (std::size_t i = 0; i < file.size();) {
        const auto        lead = static_cast<unsigned char>(file[i]);
        const std::size_t more = lead < 0xC0 ? 0 : lead < 0xE0 ? 1 : lead < 0xF0 ? 2 : 3;
        if (lead < 0x80 || more == 0 || i + more >= file.size()) {
            out += lead < 0x80 ? file[i] : '?';
            i++;
            continue;
        }
        unsigned long point = lead & (0x3Fu >> more);
        for (std::size_t k = 1; k <= more; k++)
            point = point << 6 | (static_cast<unsigned char>(file[i + k]) & 0x3Fu);
        out += "\\X4\\";
        for (int digit = 7; digit >= 0; digit--)
            out += hex[point >> 4 * digit & 15u];
        out += "\\X0\\";
        i += more + 1;
    }
    return out;
}

} // namespace

bool write_step(const Bodies &bodies, std::ostream &to)
{
    Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_Printer));
    try {
        Handle(TDocStd_Document) document;
        XCAFApp_Application::GetApplication()->NewDocument("BinXCAF", document);
        fill(bodies, document);
        STEPControl_Controller::Init();
        Interface_Static::SetCVal("write.step.schema", "AP214IS");
        Interface_Static::SetCVal("write.step.unit", "MM");
        Interface_Static::SetIVal("write.step.assembly", 1);
        STEPCAFControl_Writer writer;
        if (!writer.Transfer(document, STEPControl_AsIs))
            return false;
        const Handle(StepData_StepModel) model = writer.ChangeWriter().Model();
        head(bodies, model);
        StepData_StepWriter out(model);
        out.SendModel(Handle(StepData_Protocol)::DownCast(STEPEdit::Protocol()));
        std::ostringstream file;
        if (!out.Print(file))
            return false;
        to << in_ascii(file.str());
        return static_cast<bool>(to.flush());
    } catch (const Standard_Failure &failure) {
        throw std::runtime_error(failure.GetMessageString());
    }
}
