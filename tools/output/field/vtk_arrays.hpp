// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vtkDataObject.h>
#include <vtkNew.h>

#include <cstddef>
#include <string>

#include "cases/model/case.hpp"

namespace quoin::tools {

/// A named array of `size` tuples.
template <class Array>
vtkNew<Array> array(const char* name, std::size_t size, int components = 1) {
  vtkNew<Array> made;
  made->SetName(name);
  made->SetNumberOfComponents(components);
  made->SetNumberOfTuples(static_cast<vtkIdType>(size));
  return made;
}

/// What the numbers of materials mean, and whose field it is.
void add_names(vtkDataObject& grid, const cases::Variant& variant);

/// A grid as the text of its file: base64 within the elements, XML for any reader.
template <class Writer>
std::string xml_of(vtkDataObject& grid) {
  vtkNew<Writer> writer;
  writer->SetInputData(&grid);
  writer->SetDataModeToBinary();
  writer->SetCompressorTypeToNone();
  writer->SetByteOrderToLittleEndian();
  writer->SetHeaderTypeToUInt64();
  writer->WriteToOutputStringOn();
  writer->Write();
  return writer->GetOutputString();
}

}  // namespace quoin::tools
