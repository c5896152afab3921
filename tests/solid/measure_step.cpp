// measure_step.cpp: what does a STEP file hold, measured by reading it anew?
//
//   towershaft-step-measure drive.step  ->  a line a product: volume mm3, six bounds mm, solids,
//   name
#include <BRepBndLib.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_Printer.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <Standard_Failure.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <TopExp_Explorer.hxx>
#include <XCAFApp_Application.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>

#include <cstdio>
#include <iostream>
#include <vector>

static std::string name_of(const TDF_Label &label)
{
    Handle(TDataStd_Name) name;
    if (!label.FindAttribute(TDataStd_Name::GetID(), name))
        return "";
    std::vector<char>   room(static_cast<std::size_t>(name->Get().LengthOfCString()) + 1);
    Standard_PCharacter to = room.data();
    name->Get().ToUTF8CString(to);
    return room.data();
}

static void measure(const TDF_Label &component)
{
    const TopoDS_Shape shape = XCAFDoc_ShapeTool::GetShape(component);
    GProp_GProps       volume;
    Bnd_Box            box;
    int                solids = 0;
    double             low[3], high[3];
    BRepGProp::VolumeProperties(shape, volume, 1e-9);
    BRepBndLib::AddOptimal(shape, box, Standard_False, Standard_False);
    box.Get(low[0], low[1], low[2], high[0], high[1], high[2]);
    for (TopExp_Explorer it(shape, TopAbs_SOLID); it.More(); it.Next())
        solids++;
    std::printf("%.9g %.9g %.9g %.9g %.9g %.9g %.9g %d %d %s\n", volume.Mass(), low[0], low[1],
                low[2], high[0], high[1], high[2], solids, BRepCheck_Analyzer(shape).IsValid(),
                name_of(component).c_str());
}

int main(int count, char **words)
{
    Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_Printer));
    try {
        Handle(TDocStd_Document) document;
        XCAFApp_Application::GetApplication()->NewDocument("BinXCAF", document);
        STEPCAFControl_Reader reader;
        if (count != 2 || reader.ReadFile(words[1]) != IFSelect_RetDone ||
            !reader.Transfer(document))
            return 2;
        const Handle(XCAFDoc_ShapeTool) shapes = XCAFDoc_DocumentTool::ShapeTool(document->Main());
        TDF_LabelSequence whole, parts;
        shapes->GetFreeShapes(whole);
        if (whole.Length() != 1)
            return 2;
        XCAFDoc_ShapeTool::GetComponents(whole.First(), parts);
        for (const TDF_Label &part : parts)
            measure(part);
    } catch (const Standard_Failure &failure) {
        std::cerr << failure.GetMessageString() << "\n";
        return 3;
    }
    return 0;
}
